package org.driftward.ingest.core.derive;

import java.math.BigDecimal;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/** The findings of one assessment, asked by code. */
final class Together {

  private final Map<FindingKey, FindingValue> values = new HashMap<>();

  Together(Collection<Finding> findings) {
    findings.forEach(finding -> values.put(finding.key(), finding.value()));
  }

  boolean has(String code) {
    return values.containsKey(FindingKey.of(code));
  }

  @Nullable BigDecimal quantity(String code) {
    return quantity(FindingKey.of(code));
  }

  @Nullable BigDecimal quantity(String code, Side side) {
    return quantity(new FindingKey(code, null, side));
  }

  @Nullable Integer grade(String code) {
    return values.get(FindingKey.of(code)) instanceof Grade grade ? grade.grade() : null;
  }

  @Nullable String coded(String code) {
    return values.get(FindingKey.of(code)) instanceof Coded coded ? coded.code() : null;
  }

  private @Nullable BigDecimal quantity(FindingKey key) {
    return values.get(key) instanceof Quantity quantity ? quantity.value() : null;
  }
}
