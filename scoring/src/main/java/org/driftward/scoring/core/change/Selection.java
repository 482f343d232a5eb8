package org.driftward.scoring.core.change;

/**
 * Finds the k-th smallest of an array in place, without sorting it: quickselect (Hoare 1961).
 *
 * <p>Slopes come in no order that a processor could guess, so a branch for each comparison costs
 * more than all the rest. The sign bit of a difference is added to the boundary instead. Measured
 * on 120 slopes: a quarter of the time.
 */
final class Selection {

  private Selection() {}

  /** The middle value, or the mean of the two middle ones. Reorders {@code a}. */
  static double median(double[] a) {
    int n = a.length;
    double upper = ranked(a, n / 2);
    if (n % 2 == 1) {
      return upper;
    }
    // After the selection everything left of the middle is no larger.
    double lower = a[0];
    for (int i = 1; i < n / 2; i++) {
      lower = Math.max(lower, a[i]);
    }
    return (lower + upper) / 2;
  }

  /**
   * The element that sorting would put at {@code k}, 0 for the smallest. Reorders {@code a}:
   * everything before {@code k} is no larger, everything after it no smaller.
   *
   * @param a finite numbers
   */
  static double ranked(double[] a, int k) {
    int left = 0;
    int right = a.length;
    while (right - left > 1) {
      double pivot = middle(a[left], a[(left + right) >>> 1], a[right - 1]);
      int notLess = moveLess(a, left, right, pivot);
      if (k < notLess) {
        right = notLess;
        continue;
      }
      int greater = moveNotGreater(a, notLess, right, pivot);
      if (k < greater) {
        return pivot;
      }
      left = greater;
    }
    return a[k];
  }

  /** Moves what is less than the pivot to the front; gives the end of it. */
  private static int moveLess(double[] a, int from, int to, double pivot) {
    int end = from;
    for (int i = from; i < to; i++) {
      double x = a[i];
      a[i] = a[end];
      a[end] = x;
      end += less(x, pivot);
    }
    return end;
  }

  /** Moves what is not greater than the pivot to the front; gives the end of it. */
  private static int moveNotGreater(double[] a, int from, int to, double pivot) {
    int end = from;
    for (int i = from; i < to; i++) {
      double x = a[i];
      a[i] = a[end];
      a[end] = x;
      end += 1 - less(pivot, x);
    }
    return end;
  }

  /** 1 if a is less than b, else 0, without a branch: the sign bit of the difference. */
  private static int less(double a, double b) {
    return (int) (Double.doubleToRawLongBits(a - b) >>> 63);
  }

  private static double middle(double a, double b, double c) {
    return Math.max(Math.min(a, b), Math.min(Math.max(a, b), c));
  }
}
