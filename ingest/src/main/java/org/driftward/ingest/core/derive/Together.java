package org.driftward.ingest.core.derive;

import java.math.BigDecimal;
import java.util.Collection;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/** The findings of one assessment, asked by code. They are few: looking through them is fastest. */
final class Together {

  private final Collection<Finding> findings;

  Together(Collection<Finding> findings) {
    this.findings = findings;
  }

  boolean has(String code) {
    return value(FindingKey.of(code)) != null;
  }

  @Nullable BigDecimal quantity(String code) {
    return quantity(FindingKey.of(code));
  }

  @Nullable BigDecimal quantity(String code, Side side) {
    return quantity(new FindingKey(code, null, side));
  }

  @Nullable Integer grade(String code) {
    return value(FindingKey.of(code)) instanceof Grade grade ? grade.grade() : null;
  }

  @Nullable String coded(String code) {
    return value(FindingKey.of(code)) instanceof Coded coded ? coded.code() : null;
  }

  private @Nullable BigDecimal quantity(FindingKey key) {
    return value(key) instanceof Quantity quantity ? quantity.value() : null;
  }

  private @Nullable FindingValue value(FindingKey key) {
    for (var finding : findings) {
      if (finding.key().equals(key)) {
        return finding.value();
      }
    }
    return null;
  }
}
