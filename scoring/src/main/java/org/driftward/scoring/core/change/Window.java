package org.driftward.scoring.core.change;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The recent past of one series, oldest first, times strictly rising. Bounded by age and by number;
 * of values that follow one another closely only the first and the newest are kept.
 */
public final class Window {

  static final Window EMPTY = new Window(new long[0], new double[0]);

  private final long[] times;
  private final double[] values;

  /** Arrays of the same length; not copied. */
  Window(long[] times, double[] values) {
    this.times = times;
    this.values = values;
  }

  public int size() {
    return times.length;
  }

  /** Clinical time in milliseconds since the epoch; 0 is the oldest. */
  public long time(int i) {
    return times[i];
  }

  public double value(int i) {
    return values[i];
  }

  long[] times() {
    return times;
  }

  double[] values() {
    return values;
  }

  /**
   * The window after one more value, which is the newest.
   *
   * @param oldest values before this time leave
   * @param spacing if the last value stands closer than this to the one before it, the new value
   *     takes its place
   * @param most the oldest leave when there would be more
   */
  Window with(long time, double value, long oldest, long spacing, int most) {
    int end = replacesLast(time, spacing) ? times.length - 1 : times.length;
    int start = Math.max(0, end + 1 - most);
    while (start < end && times[start] < oldest) {
      start++;
    }
    int kept = end - start;
    var newTimes = new long[kept + 1];
    var newValues = new double[kept + 1];
    System.arraycopy(times, start, newTimes, 0, kept);
    System.arraycopy(values, start, newValues, 0, kept);
    newTimes[kept] = time;
    newValues[kept] = value;
    return new Window(newTimes, newValues);
  }

  private boolean replacesLast(long time, long spacing) {
    int last = times.length - 1;
    if (last < 0) {
      return false;
    }
    return times[last] == time || (last > 0 && times[last] - times[last - 1] < spacing);
  }

  @Override
  public boolean equals(@Nullable Object other) {
    return other instanceof Window that
        && Arrays.equals(times, that.times)
        && Arrays.equals(values, that.values);
  }

  @Override
  public int hashCode() {
    return 31 * Arrays.hashCode(times) + Arrays.hashCode(values);
  }

  /** How much, never what. */
  @Override
  public String toString() {
    return "Window[" + times.length + " values]";
  }
}
