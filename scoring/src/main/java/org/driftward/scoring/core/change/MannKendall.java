package org.driftward.scoring.core.change;

import org.hipparchus.special.Erf;

/**
 * Whether values rise or fall with time more often than chance would have it. Mann 1945, Kendall
 * 1975. Uneven spacing does not matter: only the order counts.
 *
 * @param n number of values
 * @param s pairs that rise less pairs that fall
 * @param variance of {@code s} without a trend, corrected for ties
 * @param exact whether the exact distribution of {@code s} is known: up to ten values without ties
 */
record MannKendall(int n, int s, double variance, boolean exact) {

  private static final int EXACT = 10;

  /**
   * {@code TAIL[n][s]}: chance of an S of at least {@code s} among orders of n values. S moves in
   * steps of two; the places between stay empty.
   */
  private static final double[][] TAIL = tails();

  /** Values in the order of time. */
  static MannKendall of(double[] values) {
    int n = values.length;
    int s = 0;
    int equal = 0;
    int squares = 0;
    for (int i = 0; i < n; i++) {
      double earlier = values[i];
      int moved = 0;
      for (int j = i + 1; j < n; j++) {
        // The sign of the bits is the sign of the difference, and costs no branch.
        int sign = Long.signum(Double.doubleToRawLongBits(values[j] - earlier));
        s += sign;
        moved += sign & 1;
      }
      int alike = n - 1 - i - moved;
      equal += alike;
      squares += alike * alike;
    }
    double variance = n * (n - 1.0) * (2 * n + 5) / 18 - ties(equal, squares);
    return new MannKendall(n, s, variance, n <= EXACT && equal == 0);
  }

  /**
   * Chance of an S at least this far from 0, either way, if there is no trend: exact, or else by
   * the normal approximation with continuity correction.
   */
  double pValue() {
    if (s == 0) {
      return 1;
    }
    return exact ? 2 * TAIL[n][Math.abs(s)] : Erf.erfc(Math.abs(z()) / Math.sqrt(2));
  }

  /** Standard normal deviate of {@code s}, continuity corrected; 0 where nothing rises or falls. */
  double z() {
    return s == 0 ? 0 : (s - Integer.signum(s)) / Math.sqrt(variance);
  }

  /**
   * Whether the two-sided p is below {@code level}.
   *
   * @param quantile the normal quantile of {@code 1 - level / 2}; comparing with it is far cheaper
   *     than working out p
   */
  boolean below(double level, double quantile) {
    return exact ? pValue() < level : Math.abs(z()) > quantile;
  }

  /**
   * What groups of t equal values take from the variance: t(t-1)(2t+5)/18 each. The members of a
   * group have t-1, t-2, ... 0 equals after them; these sum to t(t-1)/2 and their squares to
   * t(t-1)(2t-1)/6, so that nothing need be sorted or grouped.
   */
  private static double ties(int equal, int squares) {
    return (squares + 2.0 * equal) / 3;
  }

  /**
   * Counts the orders of n values by their falling pairs: the n-th value falls below any number of
   * the others, 0 to n-1, independently of how those are ordered.
   */
  private static double[][] tails() {
    var tails = new double[EXACT + 1][];
    double[] orders = {1};
    double all = 1;
    for (int n = 1; n <= EXACT; n++) {
      int pairs = n * (n - 1) / 2;
      var next = new double[pairs + 1];
      for (int falling = 0; falling < orders.length; falling++) {
        for (int more = 0; more < n; more++) {
          next[falling + more] += orders[falling];
        }
      }
      orders = next;
      all *= n;
      tails[n] = new double[pairs + 1];
      double sum = 0;
      for (int falling = 0; falling <= pairs; falling++) {
        sum += orders[falling];
        int s = pairs - 2 * falling;
        if (s >= 0) {
          tails[n][s] = sum / all;
        }
      }
    }
    return tails;
  }
}
