package org.driftward.scoring.core.change;

/**
 * The median of all slopes between two values. Theil 1950, Sen 1968. Up to 29 % of wild values do
 * not move it far.
 */
final class TheilSen {

  private final double[] slopes;

  private TheilSen(double[] slopes) {
    this.slopes = slopes;
  }

  /**
   * Slopes between all pairs, per unit of {@code times}.
   *
   * @param times strictly rising
   */
  static TheilSen of(double[] times, double[] values) {
    int n = times.length;
    var slopes = new double[n * (n - 1) / 2];
    int k = 0;
    for (int i = 0; i < n; i++) {
      double time = times[i];
      double value = values[i];
      for (int j = i + 1; j < n; j++) {
        slopes[k++] = (values[j] - value) / (times[j] - time);
      }
    }
    return new TheilSen(slopes);
  }

  int pairs() {
    return slopes.length;
  }

  /** The median slope. */
  double slope() {
    return Selection.median(slopes);
  }

  /** The slope at a place in the sorted order, 1 for the lowest. */
  double ranked(int rank) {
    return Selection.ranked(slopes, rank - 1);
  }

  /**
   * How many places from either end of the sorted slopes the ends of the confidence interval stand.
   * Sen 1968: the interval holds the slopes that a test of Kendall's S would not refuse.
   *
   * @param z normal quantile of the confidence, for example 1.96 for 95 %
   * @return a rank of at least 1
   */
  int rankOfLowerEnd(double z, double variance) {
    return Math.max(1, (int) Math.floor((slopes.length - z * Math.sqrt(variance)) / 2));
  }
}
