package org.driftward.ingest.core.derive;

import java.util.List;
import org.driftward.ingest.contract.Derivations.Derived;
import org.driftward.ingest.contract.Derivations.Question;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.jspecify.annotations.Nullable;

/** The total of the Glasgow Coma Scale. A part that cannot be tested makes no total. */
final class Glasgow {

  static final String SOURCE = "Teasdale and Jennett 1974";
  static final FindingKey EYE = FindingKey.of("gcs-eye");
  static final FindingKey VERBAL = FindingKey.of("gcs-verbal");
  static final FindingKey MOTOR = FindingKey.of("gcs-motor");
  static final FindingKey TOTAL = FindingKey.of("gcs-total");

  private Glasgow() {}

  static void total(Together together, List<Derived> derived, List<Question> questions) {
    var sum = sum(together);
    if (sum == null || together.has(TOTAL.code())) {
      return;
    }
    derived.add(
        new Derived(
            Finding.grade(TOTAL.code(), sum),
            "E%d + V%d + M%d"
                .formatted(
                    together.grade(EYE.code()),
                    together.grade(VERBAL.code()),
                    together.grade(MOTOR.code())),
            SOURCE,
            List.of(EYE, VERBAL, MOTOR)));
  }

  /** Of the three parts; null unless all are recorded. */
  static @Nullable Integer sum(Together together) {
    var eye = together.grade(EYE.code());
    var verbal = together.grade(VERBAL.code());
    var motor = together.grade(MOTOR.code());
    return eye == null || verbal == null || motor == null
        ? null
        : Integer.valueOf(eye + verbal + motor);
  }
}
