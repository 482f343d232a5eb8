package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** How the rows, or the inputs themselves, become one number. */
public sealed interface Aggregate {

  /** The points of all groups of rows, added up. */
  record Sum() implements Aggregate {}

  /** The most points that any row earned. */
  record Max() implements Aggregate {}

  /**
   * Inputs divided by inputs. Both {@code over} and {@code under} are products of weighted sums;
   * inputs are named by their place.
   *
   * <p>A ratio with an input missing can be anything, so it has no bounds worth showing: such a
   * score is left out until it is complete. So it is when it would divide by zero.
   *
   * @param digits that are shown; classes are decided on the unrounded quotient
   */
  record Ratio(
      List<Map<Integer, BigDecimal>> over, List<Map<Integer, BigDecimal>> under, int digits)
      implements Aggregate {

    /** Enough to tell any quotient of chart values from any printed cut-off. */
    private static final int EXACT_DIGITS = 12;

    public Ratio {
      over = List.copyOf(over);
      under = List.copyOf(under);
      if (over.isEmpty() || under.isEmpty()) {
        throw new IllegalArgumentException("a ratio needs something over and something under");
      }
      if (digits < 0 || digits > EXACT_DIGITS) {
        throw new IllegalArgumentException("a ratio of " + digits + " digits");
      }
    }

    /** The quotient, or null if it divides by zero. */
    @Nullable BigDecimal of(BigDecimal[] values) {
      var divisor = product(under, values);
      return divisor.signum() == 0
          ? null
          : product(over, values).divide(divisor, EXACT_DIGITS, RoundingMode.HALF_UP);
    }

    private static BigDecimal product(List<Map<Integer, BigDecimal>> sums, BigDecimal[] values) {
      var product = BigDecimal.ONE;
      for (var sum : sums) {
        var total = BigDecimal.ZERO;
        for (var term : sum.entrySet()) {
          total = total.add(times(term.getValue(), values[term.getKey()]));
        }
        product = times(product, total);
      }
      return product;
    }

    /** Most weights are 1. */
    private static BigDecimal times(BigDecimal weight, BigDecimal value) {
      return weight.compareTo(BigDecimal.ONE) == 0 ? value : weight.multiply(value);
    }
  }
}
