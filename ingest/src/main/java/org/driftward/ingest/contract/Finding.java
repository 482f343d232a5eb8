package org.driftward.ingest.contract;

import java.math.BigDecimal;
import java.util.Objects;

/** One measured or observed thing. */
public record Finding(FindingKey key, FindingValue value) {

  public Finding {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(value, "value");
  }

  public static Finding quantity(String code, String value, String unit) {
    return new Finding(FindingKey.of(code), new FindingValue.Quantity(new BigDecimal(value), unit));
  }

  public static Finding coded(String code, String coded) {
    return new Finding(FindingKey.of(code), new FindingValue.Coded(coded));
  }

  public static Finding grade(String code, int grade) {
    return new Finding(FindingKey.of(code), new FindingValue.Grade(grade));
  }

  public String code() {
    return key.code();
  }
}
