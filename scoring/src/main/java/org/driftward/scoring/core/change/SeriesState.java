package org.driftward.scoring.core.change;

import java.time.Instant;
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

  /**
   * The state after a documented change: a new quiet period begins with the next reading, and until
   * it has enough values there is no drift. The recent past stays, so that a trend goes on.
   *
   * @param at clinical time of the change
   * @throws IllegalArgumentException if the series has a reading later than {@code at}
   */
  public SeriesState restarted(Instant at) {
    refuseBefore(at.toEpochMilli());
    return new SeriesState(Forming.EMPTY, NEVER, Cusum.ZERO, NEVER, window);
  }

  void refuseBefore(long time) {
    if (time < newest()) {
      throw new IllegalArgumentException("a series goes forward in clinical time only");
    }
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
