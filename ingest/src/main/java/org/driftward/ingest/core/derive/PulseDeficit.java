package org.driftward.ingest.core.derive;

import java.util.List;
import org.driftward.ingest.contract.Derivations.Derived;
import org.driftward.ingest.contract.Derivations.Question;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;

/** Beats that do not reach the wrist: apical minus radial rate, counted together for a minute. */
final class PulseDeficit {

  private static final String CODE = "pulse-deficit";
  private static final FindingKey APICAL = FindingKey.of("apical-rate");
  private static final FindingKey RADIAL = FindingKey.of("radial-rate");

  private PulseDeficit() {}

  static void derive(Together together, List<Derived> derived, List<Question> questions) {
    var apical = together.quantity(APICAL.code());
    var radial = together.quantity(RADIAL.code());
    if (apical == null || radial == null || together.has(CODE)) {
      return;
    }
    var deficit = apical.subtract(radial);
    var from = List.of(APICAL, RADIAL);
    if (deficit.signum() < 0) {
      // More beats at the wrist than at the heart cannot be: somebody miscounted.
      questions.add(
          new Question(CODE, "the radial rate is above the apical rate: count again", from));
      return;
    }
    derived.add(
        new Derived(
            Finding.quantity(CODE, deficit.toPlainString(), "/min"),
            apical.toPlainString() + " - " + radial.toPlainString() + " /min",
            "nursing pages, with a worked example",
            from));
  }
}
