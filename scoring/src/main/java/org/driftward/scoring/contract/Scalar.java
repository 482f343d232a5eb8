package org.driftward.scoring.contract;

import java.math.BigDecimal;
import java.util.Objects;
import org.driftward.ingest.contract.FindingValue;
import org.jspecify.annotations.Nullable;

/**
 * A value as it is shown: a number or a word. Written as a plain JSON number or string.
 *
 * @param number or null if this is a word
 * @param word or null if this is a number
 */
public record Scalar(@Nullable BigDecimal number, @Nullable String word) {

  public Scalar {
    if ((number == null) == (word == null)) {
      throw new IllegalArgumentException("a scalar is a number or a word");
    }
  }

  public static Scalar of(BigDecimal number) {
    return new Scalar(number, null);
  }

  public static Scalar of(String word) {
    return new Scalar(null, word);
  }

  public static Scalar of(FindingValue value) {
    if (value instanceof FindingValue.Quantity quantity) {
      return of(quantity.value());
    }
    if (value instanceof FindingValue.Grade grade) {
      return of(BigDecimal.valueOf(grade.grade()));
    }
    return of(value.plain());
  }

  public String plain() {
    return number == null ? Objects.requireNonNull(word) : number.toPlainString();
  }
}
