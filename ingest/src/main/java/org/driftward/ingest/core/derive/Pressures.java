package org.driftward.ingest.core.derive;

import java.math.BigDecimal;
import java.math.MathContext;
import java.util.List;
import org.driftward.ingest.contract.Derivations.Derived;
import org.driftward.ingest.contract.Derivations.Question;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue.Quantity;

/** Mean arterial pressure and pulse pressure from systolic and diastolic. */
final class Pressures {

  private static final String UNIT = "mm[Hg]";
  private static final String HANDBOOKS = "nursing handbooks, Katz and Ruoff 2004";
  private static final FindingKey SYSTOLIC = FindingKey.of("systolic-pressure");
  private static final FindingKey DIASTOLIC = FindingKey.of("diastolic-pressure");
  private static final BigDecimal TWO = BigDecimal.valueOf(2);
  private static final BigDecimal THREE = BigDecimal.valueOf(3);

  private Pressures() {}

  static void mean(Together together, List<Derived> derived, List<Question> questions) {
    var systolic = together.quantity(SYSTOLIC.code());
    var diastolic = together.quantity(DIASTOLIC.code());
    if (systolic == null || diastolic == null || together.has("mean-arterial-pressure")) {
      return;
    }
    var mean = systolic.add(diastolic.multiply(TWO)).divide(THREE, MathContext.DECIMAL32);
    derived.add(
        derived(
            "mean-arterial-pressure",
            mean,
            "(" + systolic.toPlainString() + " + 2 x " + diastolic.toPlainString() + ") / 3"));
  }

  static void pulse(Together together, List<Derived> derived, List<Question> questions) {
    var systolic = together.quantity(SYSTOLIC.code());
    var diastolic = together.quantity(DIASTOLIC.code());
    if (systolic == null || diastolic == null || together.has("pulse-pressure")) {
      return;
    }
    derived.add(
        derived(
            "pulse-pressure",
            systolic.subtract(diastolic),
            systolic.toPlainString() + " - " + diastolic.toPlainString()));
  }

  private static Derived derived(String code, BigDecimal value, String formula) {
    return new Derived(
        new Finding(FindingKey.of(code), new Quantity(value, UNIT)),
        formula + " " + UNIT,
        HANDBOOKS,
        List.of(SYSTOLIC, DIASTOLIC));
  }
}
