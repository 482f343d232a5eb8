package org.driftward.scoring.core.change;

/**
 * Finds the k-th smallest of an array in place, without sorting it. Hoare 1961, middle element as
 * pivot; the arrays have some hundred elements, and equal ones are common.
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

  /** The element that sorting would put at {@code k}, 0 for the smallest. Reorders {@code a}. */
  static double ranked(double[] a, int k) {
    int left = 0;
    int right = a.length - 1;
    while (left < right) {
      double pivot = a[k];
      int i = left;
      int j = right;
      while (i <= j) {
        while (a[i] < pivot) {
          i++;
        }
        while (pivot < a[j]) {
          j--;
        }
        if (i <= j) {
          double swap = a[i];
          a[i++] = a[j];
          a[j--] = swap;
        }
      }
      if (j < k) {
        left = i;
      }
      if (k < i) {
        right = j;
      }
    }
    return a[k];
  }
}
