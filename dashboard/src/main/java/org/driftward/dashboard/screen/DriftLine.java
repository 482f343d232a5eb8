package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A score drawn on a line from 0 to a little past the emergency threshold: a hollow mark where this
 * patient usually is, a full one where they are now at the least, a dashed one where they may be.
 * Positions run from 0 to 200.
 *
 * @param usual or null where the usual level is unknown
 * @param low position of the least possible total
 * @param high position of the greatest
 */
public record DriftLine(@Nullable Double usual, double low, double high) {

  private static final double WIDTH = 200;

  /** A total past this is drawn at the end of the line. */
  private static final double END = 14;

  public static DriftLine of(BigDecimal low, BigDecimal high, @Nullable BigDecimal usual) {
    return new DriftLine(usual == null ? null : position(usual), position(low), position(high));
  }

  public boolean sure() {
    return low == high;
  }

  private static double position(BigDecimal total) {
    double clipped = Math.max(0, Math.min(END, total.doubleValue()));
    return Math.round(clipped / END * WIDTH * 10) / 10.0;
  }
}
