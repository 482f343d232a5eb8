package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of numbers; a null end is open.
 *
 * @param low lower end, or null
 * @param lowIn whether {@code low} itself belongs
 * @param high upper end, or null
 * @param highIn whether {@code high} itself belongs
 */
public record Span(
    @Nullable BigDecimal low, boolean lowIn, @Nullable BigDecimal high, boolean highIn) {

  public static final Span ALL = new Span(null, false, null, false);

  public Span {
    if (low != null && high != null) {
      int order = low.compareTo(high);
      if (order > 0 || (order == 0 && !(lowIn && highIn))) {
        throw new IllegalArgumentException("nothing lies between " + low + " and " + high);
      }
    }
  }

  public boolean holds(BigDecimal value) {
    if (low != null) {
      int order = value.compareTo(low);
      if (order < 0 || (order == 0 && !lowIn)) {
        return false;
      }
    }
    if (high != null) {
      int order = value.compareTo(high);
      return order < 0 || (order == 0 && highIn);
    }
    return true;
  }
}
