package org.driftward.scoring.core.change;

import java.util.Objects;

/**
 * All that is remembered of one series of one encounter. Its size is bounded, however long the
 * history: see {@link StateCode} for its compact form.
 *
 * @param quiet where the baseline comes from
 * @param counted clinical time of the last value that counted for baseline and sums, or {@link
 *     #NEVER}
 * @param sums standardised drift, added up
 * @param changedSince when the value first was seen worse than usual, or {@link #NEVER} while it is
 *     not
 * @param window the recent past
 */
public record SeriesState(Quiet quiet, long counted, Cusum sums, long changedSince, Window window) {

  /** No time. */
  static final long NEVER = Long.MIN_VALUE;

  private static final SeriesState EMPTY =
      new SeriesState(Forming.EMPTY, NEVER, Cusum.ZERO, NEVER, Window.EMPTY);

  public SeriesState {
    Objects.requireNonNull(quiet, "quiet");
    Objects.requireNonNull(sums, "sums");
    Objects.requireNonNull(window, "window");
  }

  /** Of a series without any value. */
  public static SeriesState empty() {
    return EMPTY;
  }

  /** Clinical time of the newest value that is remembered, or {@link #NEVER}. */
  long newest() {
    int n = window.size();
    return Math.max(counted, n == 0 ? NEVER : window.time(n - 1));
  }

  /** Compact form, usually below 120 bytes. */
  public byte[] encode() {
    return StateCode.encode(this);
  }

  /**
   * The inverse of {@link #encode}: exactly the same state.
   *
   * @throws IllegalArgumentException if the bytes are of an unknown form or cut short
   */
  public static SeriesState decode(byte[] bytes) {
    return StateCode.decode(bytes);
  }
}
