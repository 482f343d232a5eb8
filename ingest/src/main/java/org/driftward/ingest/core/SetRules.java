package org.driftward.ingest.core;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Coded;
import org.driftward.ingest.contract.FindingValue.Grade;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.ingest.core.Draft.Placed;
import org.jspecify.annotations.Nullable;

/** What the findings of one assessment say about each other. */
final class SetRules {

  private static final BigDecimal AIR_PERCENT = BigDecimal.valueOf(21);

  private final Map<FindingKey, Placed> byKey = new HashMap<>();
  private final Faults faults;

  private SetRules(Faults faults) {
    this.faults = faults;
  }

  static void check(List<Placed> findings, Faults faults) {
    var rules = new SetRules(faults);
    findings.forEach(rules::checkRepeated);
    rules.checkPressures();
    rules.checkOxygen();
    rules.checkGlasgow();
  }

  private void checkRepeated(Placed placed) {
    var first = byKey.putIfAbsent(placed.finding().key(), placed);
    if (first != null) {
      faults.add(
          placed.pointer(), Rule.DUPLICATE_FINDING, "the same finding as " + first.pointer());
    }
  }

  /**
   * Both zero is the pressure that nobody can measure, the worst there is, and is taken; otherwise
   * diastolic lies below systolic and the mean between them.
   */
  private void checkPressures() {
    var systolic = quantity("systolic-pressure");
    var diastolic = quantity("diastolic-pressure");
    var mean = quantity("mean-arterial-pressure");
    if (systolic == null || diastolic == null) {
      return;
    }
    boolean unrecordable = systolic.signum() == 0 && diastolic.signum() == 0;
    if (diastolic.compareTo(systolic) >= 0 && !unrecordable) {
      contradiction(
          "diastolic-pressure",
          "/value",
          "diastolic " + plain(diastolic) + " is not below systolic " + plain(systolic));
    } else if (mean != null && (mean.compareTo(diastolic) < 0 || mean.compareTo(systolic) > 0)) {
      contradiction(
          "mean-arterial-pressure",
          "/value",
          "the mean " + plain(mean) + " does not lie between diastolic and systolic");
    }
  }

  private void checkOxygen() {
    var given = find("inspired-oxygen");
    if (given == null || !given.value().equals(new Coded("air"))) {
      return;
    }
    var flow = quantity("oxygen-flow");
    if (flow != null && flow.signum() > 0) {
      contradiction("oxygen-flow", "/value", "breathing air, and yet an oxygen flow");
    }
    var fraction = quantity("inspired-oxygen-fraction");
    if (fraction != null && fraction.compareTo(AIR_PERCENT) > 0) {
      contradiction("inspired-oxygen-fraction", "/value", "breathing air, and yet more than 21 %");
    }
  }

  private void checkGlasgow() {
    var total = grade("gcs-total");
    var eye = grade("gcs-eye");
    var verbal = grade("gcs-verbal");
    var motor = grade("gcs-motor");
    if (total != null && eye != null && verbal != null && motor != null) {
      int sum = eye + verbal + motor;
      if (sum != total) {
        contradiction("gcs-total", "/grade", "the parts sum to " + sum + ", not " + total);
      }
    }
  }

  private void contradiction(String code, String field, String detail) {
    var placed = byKey.get(FindingKey.of(code));
    faults.add(placed.pointer() + field, Rule.CONTRADICTION, detail);
  }

  private @Nullable Finding find(String code) {
    var placed = byKey.get(FindingKey.of(code));
    return placed == null ? null : placed.finding();
  }

  private @Nullable BigDecimal quantity(String code) {
    var finding = find(code);
    return finding != null && finding.value() instanceof Quantity quantity
        ? quantity.value()
        : null;
  }

  private @Nullable Integer grade(String code) {
    var finding = find(code);
    return finding != null && finding.value() instanceof Grade grade ? grade.grade() : null;
  }

  private static String plain(BigDecimal value) {
    return value.toPlainString();
  }
}
