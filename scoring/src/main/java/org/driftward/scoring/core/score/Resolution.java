package org.driftward.scoring.core.score;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * How finely a published table reads an input. A value is rounded once, to this, and then banded,
 * so that nothing falls between two cells; numbers are kept as whole steps of the last digit.
 *
 * <p>Tables are printed in whole steps and say nothing of values between them: rounding half away
 * from zero is an engineering choice. A derived value that the source compares exactly is rounded
 * {@link RoundingMode#FLOOR}, which leaves "below 0.5" and "0.5 or more" exact.
 *
 * @param digits after the decimal point, 0 to 6
 */
public record Resolution(int digits, RoundingMode mode) {

  /** Beyond any measurement; keeps {@link #steps} from overflowing. */
  private static final int MOST_DIGITS_BEFORE_THE_POINT = 11;

  private static final long BEYOND = 1_000_000_000_000_000_000L;

  public Resolution {
    if (digits < 0 || digits > 6) {
      throw new IllegalArgumentException("rounding to " + digits + " digits");
    }
  }

  public static Resolution digits(int digits) {
    return new Resolution(digits, RoundingMode.HALF_UP);
  }

  /** The value in steps of the last digit: 37.25 at one digit is 373. */
  long steps(BigDecimal value) {
    if (value.precision() - value.scale() > MOST_DIGITS_BEFORE_THE_POINT) {
      return value.signum() * BEYOND;
    }
    return value.setScale(digits, mode).movePointRight(digits).longValue();
  }

  /** {@code over / under}, rounded, in steps of the last digit. */
  long steps(BigDecimal over, BigDecimal under) {
    return over.divide(under, digits, mode).movePointRight(digits).longValue();
  }

  BigDecimal value(long steps) {
    return BigDecimal.valueOf(steps, digits);
  }

  /**
   * The edge of a band in steps.
   *
   * @throws IllegalArgumentException if the edge is finer than the resolution
   */
  public long edge(BigDecimal edge) {
    try {
      return edge.setScale(digits, RoundingMode.UNNECESSARY)
          .movePointRight(digits)
          .longValueExact();
    } catch (ArithmeticException e) {
      throw new IllegalArgumentException(
          "the edge " + edge.toPlainString() + " is finer than " + digits + " digits", e);
    }
  }
}
