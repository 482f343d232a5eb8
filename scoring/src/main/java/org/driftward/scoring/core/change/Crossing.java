package org.driftward.scoring.core.change;

import org.jspecify.annotations.Nullable;

/**
 * When a line through the recent past reaches a threshold, if it goes on.
 *
 * @param hours from the newest value
 * @param earliest by the steeper end of the slope's confidence interval
 * @param latest by the shallower end; null when that end does not lead there
 */
record Crossing(double hours, double earliest, @Nullable Double latest) {

  /**
   * The line runs through the level that the values support now, the median of {@code value - slope
   * * hour}, not through the newest value alone.
   *
   * @param hours relative to the newest value, none positive
   * @param threshold beyond the newest value in the direction of {@code slope}
   * @return null when the newest value already has passed the threshold
   */
  static @Nullable Crossing of(
      double[] hours,
      double[] values,
      double slope,
      double threshold,
      TheilSen slopes,
      double variance,
      double quantile) {
    int n = values.length;
    double direction = Math.signum(slope);
    if ((threshold - values[n - 1]) * direction <= 0) {
      return null;
    }
    var levels = new double[n];
    for (int i = 0; i < n; i++) {
      levels[i] = values[i] - slope * hours[i];
    }
    double gap = Math.max(0, (threshold - Selection.median(levels)) * direction);
    int rank = slopes.rankOfLowerEnd(quantile, variance);
    double low = slopes.ranked(rank) * direction;
    double high = slopes.ranked(slopes.pairs() + 1 - rank) * direction;
    double steep = Math.max(low, high);
    double shallow = Math.min(low, high);
    return new Crossing(gap / Math.abs(slope), gap / steep, shallow > 0 ? gap / shallow : null);
  }
}
