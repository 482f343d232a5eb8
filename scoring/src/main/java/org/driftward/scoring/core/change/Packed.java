package org.driftward.scoring.core.change;

/** What {@link PackedWriter} and {@link PackedReader} agree on. */
final class Packed {

  /** Stands for values that no small number of decimals writes exactly; they take eight bytes. */
  static final int RAW = 7;

  private static final double[] POWERS = {1, 1e1, 1e2, 1e3, 1e4, 1e5, 1e6};

  /** Whole numbers up to here survive being a double. */
  private static final double EXACT = 1L << 53;

  private Packed() {}

  /** The fewest decimals, not below {@code least}, that write {@code value} exactly, or RAW. */
  static int decimals(double value, int least) {
    for (int decimals = least; decimals < RAW; decimals++) {
      double scaled = value * POWERS[decimals];
      if (!(Math.abs(scaled) < EXACT)) {
        return RAW;
      }
      double back = unscale(Math.round(scaled), decimals);
      if (Double.doubleToRawLongBits(back) == Double.doubleToRawLongBits(value)) {
        return decimals;
      }
    }
    return RAW;
  }

  static long scale(double value, int decimals) {
    return Math.round(value * POWERS[decimals]);
  }

  static double unscale(long scaled, int decimals) {
    return scaled / POWERS[decimals];
  }
}
