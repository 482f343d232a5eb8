package org.driftward.scoring.core.change;

/**
 * The two arms of a tabular CUSUM: what has piled up above the centre and below it. Page 1954;
 * recursion as in the NIST/SEMATECH e-Handbook, 6.3.2.3.
 *
 * @param up {@code max(0, up + z - k)}, never negative
 * @param down {@code max(0, down - z - k)}, never negative
 */
public record Cusum(double up, double down) {

  static final Cusum ZERO = new Cusum(0, 0);

  /**
   * The arms after one more value.
   *
   * @param z distance from the centre
   * @param k slack, in the unit of {@code z}
   */
  Cusum next(double z, double k) {
    return new Cusum(Math.max(0, up + z - k), Math.max(0, down - z - k));
  }

  /** The arms held at {@code limit}. */
  Cusum heldAt(double limit) {
    return new Cusum(Math.min(up, limit), Math.min(down, limit));
  }

  /** The larger arm, negative if it is the lower one. */
  double larger() {
    return up >= down ? up : -down;
  }
}
