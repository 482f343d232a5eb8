package org.driftward.ingest.contract;

import java.math.BigDecimal;
import java.util.Objects;

/**
 * What was found: a measured quantity, a grade on an ordinal scale, a coded value, or free words.
 * Equality of quantities is numeric, so 37.0 and 37.00 are the same temperature.
 */
public sealed interface FindingValue {

  /** The value as a person writes it, without its unit. */
  String plain();

  /**
   * @param value as measured, in {@code unit}; kept exactly; at most {@value #MOST_DIGITS} digits
   *     before and after the point, so that no number blows up memory when it is written out
   * @param unit UCUM code, case-sensitive, for example {@code /min}, {@code mm[Hg]}, {@code Cel}
   */
  record Quantity(BigDecimal value, String unit) implements FindingValue {
    public static final int MOST_DIGITS = 24;

    public Quantity {
      if (!fits(value)) {
        throw new IllegalArgumentException("a number of more than " + MOST_DIGITS + " digits");
      }
      var stripped = value.stripTrailingZeros();
      value = stripped.scale() < 0 ? stripped.setScale(0) : stripped;
      Objects.requireNonNull(unit, "unit");
    }

    /** Whether a number is one that a person or a device may have measured. */
    public static boolean fits(BigDecimal value) {
      return value.precision() <= MOST_DIGITS && Math.abs((long) value.scale()) <= MOST_DIGITS;
    }

    @Override
    public String plain() {
      return value.toPlainString();
    }
  }

  /** A step on the ordinal scale that the catalogue names for the finding. */
  record Grade(int grade) implements FindingValue {
    @Override
    public String plain() {
      return Integer.toString(grade);
    }
  }

  /** One of the codes that the catalogue lists for the finding. */
  record Coded(String code) implements FindingValue {
    public Coded {
      Objects.requireNonNull(code, "code");
    }

    @Override
    public String plain() {
      return code;
    }
  }

  /** Free words. Never scored, never logged. */
  record Text(String text) implements FindingValue {
    public Text {
      Objects.requireNonNull(text, "text");
    }

    @Override
    public String plain() {
      return text;
    }

    @Override
    public String toString() {
      return "Text[" + text.length() + " characters]";
    }
  }
}
