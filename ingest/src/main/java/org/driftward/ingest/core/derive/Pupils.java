package org.driftward.ingest.core.derive;

import java.util.List;
import org.driftward.ingest.contract.Derivations.Derived;
import org.driftward.ingest.contract.Derivations.Question;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.Side;

/** The difference of the pupils, which is drift even while each of them is of a usual size. */
final class Pupils {

  private static final String CODE = "pupil-difference";
  private static final String SIZE = "pupil-size";

  private Pupils() {}

  static void derive(Together together, List<Derived> derived, List<Question> questions) {
    var left = together.quantity(SIZE, Side.LEFT);
    var right = together.quantity(SIZE, Side.RIGHT);
    if (left == null || right == null || together.has(CODE)) {
      return;
    }
    var larger = left.max(right);
    var smaller = left.min(right);
    derived.add(
        new Derived(
            Finding.quantity(CODE, larger.subtract(smaller).toPlainString(), "mm"),
            larger.toPlainString() + " - " + smaller.toPlainString() + " mm",
            "up to 1 mm with normal reactions is usually physiological: secondary pages",
            List.of(
                new FindingKey(SIZE, null, Side.LEFT), new FindingKey(SIZE, null, Side.RIGHT))));
  }
}
