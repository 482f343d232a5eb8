package org.driftward.scoring.core.change;

import java.util.Arrays;
import org.hipparchus.special.Erf;

/**
 * Whether values rise or fall with time more often than chance would have it. Mann 1945, Kendall
 * 1975. Uneven spacing does not matter: only the order counts.
 *
 * @param n number of values
 * @param s pairs that rise less pairs that fall
 * @param variance of {@code s} without a trend, corrected for ties
 * @param pValue two-sided: exact for up to ten values without ties, otherwise by the normal
 *     approximation with continuity correction
 */
record MannKendall(int n, int s, double variance, double pValue) {

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
    for (int i = 0; i < n; i++) {
      double earlier = values[i];
      for (int j = i + 1; j < n; j++) {
        double later = values[j];
        s += (later > earlier ? 1 : 0) - (later < earlier ? 1 : 0);
        equal += later == earlier ? 1 : 0;
      }
    }
    double variance = n * (n - 1.0) * (2 * n + 5) / 18;
    if (equal > 0) {
      variance -= ties(values);
    }
    double p = n <= EXACT && equal == 0 ? exact(n, s) : normal(s, variance);
    return new MannKendall(n, s, variance, p);
  }

  /** Standard normal deviate of {@code s}, continuity corrected; 0 where nothing rises or falls. */
  double z() {
    return deviate(s, variance);
  }

  private static double deviate(int s, double variance) {
    return s == 0 ? 0 : (s - Integer.signum(s)) / Math.sqrt(variance);
  }

  private static double normal(int s, double variance) {
    return s == 0 ? 1 : Erf.erfc(Math.abs(deviate(s, variance)) / Math.sqrt(2));
  }

  private static double exact(int n, int s) {
    return s == 0 ? 1 : Math.min(1, 2 * TAIL[n][Math.abs(s)]);
  }

  /** What groups of {@code t} equal values take from the variance: t(t-1)(2t+5)/18 each. */
  private static double ties(double[] values) {
    var sorted = values.clone();
    Arrays.sort(sorted);
    double sum = 0;
    for (int i = 0, j; i < sorted.length; i = j) {
      j = i + 1;
      while (j < sorted.length && sorted[j] == sorted[i]) {
        j++;
      }
      double t = j - i;
      sum += t * (t - 1) * (2 * t + 5);
    }
    return sum / 18;
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
