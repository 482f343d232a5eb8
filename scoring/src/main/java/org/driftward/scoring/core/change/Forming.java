package org.driftward.scoring.core.change;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * A quiet period that still takes values. The newest one waits apart until the next reading comes,
 * so that no value is ever judged against a baseline it is part of.
 */
public final class Forming implements Quiet {

  static final Forming EMPTY = new Forming(new double[0], 0, 0, null);

  private final double[] values;
  private final long from;
  private final long until;
  private final @Nullable Waiting waiting;

  /**
   * @param values in the order of clinical time; not copied
   * @param from clinical time of the first of them, 0 if there is none
   * @param until of the last of them
   */
  Forming(double[] values, long from, long until, @Nullable Waiting waiting) {
    this.values = values;
    this.from = from;
    this.until = until;
    this.waiting = waiting;
  }

  /** The newest value of the quiet period, not yet part of the baseline. */
  record Waiting(long time, double value) {}

  /** How many values the baseline rests on so far. */
  public int sets() {
    return values.length;
  }

  double[] values() {
    return values;
  }

  long from() {
    return from;
  }

  long until() {
    return until;
  }

  @Nullable Waiting waiting() {
    return waiting;
  }

  /** The same with the waiting value taken in. */
  Forming admitted() {
    if (waiting == null) {
      return this;
    }
    var more = Arrays.copyOf(values, values.length + 1);
    more[values.length] = waiting.value();
    return new Forming(more, values.length == 0 ? waiting.time() : from, waiting.time(), null);
  }

  /** The same with a new value waiting. */
  Forming with(long time, double value) {
    return new Forming(values, from, until, new Waiting(time, value));
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Forming that
        && Arrays.equals(values, that.values)
        && from == that.from
        && until == that.until
        && (waiting == null ? that.waiting == null : waiting.equals(that.waiting));
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(values) + Long.hashCode(until);
  }

  /** How much, never what. */
  @Override
  public String toString() {
    return "Forming[" + values.length + " values]";
  }
}
