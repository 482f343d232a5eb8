package org.driftward.scoring.core.change;

import java.util.Arrays;

/**
 * Centre and spread that one wild value cannot move. For the few values of a quiet period; sorting
 * a copy is the fastest way at that size.
 */
final class Robust {

  /**
   * Makes the median absolute deviation agree with the standard deviation of normal values. Hampel
   * 1974; the same four digits as the R function {@code mad}.
   */
  static final double CONSISTENCY = 1.4826;

  private Robust() {}

  /** The middle value, or the mean of the two middle ones. */
  static double median(double[] values) {
    var sorted = sorted(values);
    int n = sorted.length;
    return n % 2 == 1 ? sorted[n / 2] : (sorted[n / 2 - 1] + sorted[n / 2]) / 2;
  }

  /** The middle value; of two middle ones the lower. Always one that occurs. */
  static double lowMedian(double[] values) {
    return sorted(values)[(values.length - 1) / 2];
  }

  /** The middle value; of two middle ones the higher. Always one that occurs. */
  static double highMedian(double[] values) {
    return sorted(values)[values.length / 2];
  }

  /** The most frequent value; of several the one that came first. */
  static double mode(double[] values) {
    double mode = values[0];
    int most = 0;
    for (double candidate : values) {
      int count = 0;
      for (double value : values) {
        count += value == candidate ? 1 : 0;
      }
      if (count > most) {
        most = count;
        mode = candidate;
      }
    }
    return mode;
  }

  /** 1.4826 times the median distance from {@code centre}. */
  static double spread(double[] values, double centre) {
    var distances = new double[values.length];
    for (int i = 0; i < values.length; i++) {
      distances[i] = Math.abs(values[i] - centre);
    }
    return CONSISTENCY * median(distances);
  }

  private static double[] sorted(double[] values) {
    if (values.length == 0) {
      throw new IllegalArgumentException("no values, no centre");
    }
    var sorted = values.clone();
    Arrays.sort(sorted);
    return sorted;
  }
}
