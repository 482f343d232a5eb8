package org.driftward.ingest.core.derive;

import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.Derivations.Derived;
import org.driftward.ingest.contract.Derivations.Question;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;

/**
 * ACVPU from the Glasgow Coma Scale or from orientation, only where the scales leave no doubt.
 *
 * <p>A total of 15 is alert. Below that the scales overlap (McNarry and Goldhill 2004: medians of
 * 15, 13, 8 and 6 with overlapping ranges), so nothing is computed and somebody is asked.
 * Orientation alone says nothing about the eyes: a patient who must be woken may then know the
 * date. But eyes open by themselves, commands obeyed and full orientation are E4 V5 M6, which is
 * 15. A lost orientation may be this patient's usual state, so whether it is new is asked as well.
 */
final class Consciousness {

  private static final String CODE = "consciousness";
  private static final List<String> ORIENTATION =
      List.of(
          "orientation-person", "orientation-place", "orientation-time", "orientation-situation");
  private static final int ALERT = 15;

  private Consciousness() {}

  static void derive(Together together, List<Derived> derived, List<Question> questions) {
    if (together.has(CODE)) {
      return;
    }
    var parts = Glasgow.sum(together);
    var total = parts == null ? together.grade(Glasgow.TOTAL.code()) : parts;
    if (total != null) {
      fromGlasgow(total, parts != null, derived, questions);
    } else {
      fromOrientation(together, derived, questions);
    }
  }

  private static void fromGlasgow(
      int total, boolean byParts, List<Derived> derived, List<Question> questions) {
    var from =
        byParts ? List.of(Glasgow.EYE, Glasgow.VERBAL, Glasgow.MOTOR) : List.of(Glasgow.TOTAL);
    if (total == ALERT) {
      derived.add(alert("Glasgow Coma Scale 15 is alert", from));
    } else {
      questions.add(
          new Question(
              CODE, "Glasgow Coma Scale " + total + " is not fully alert: record ACVPU", from));
    }
  }

  private static void fromOrientation(
      Together together, List<Derived> derived, List<Question> questions) {
    var asked = ORIENTATION.stream().filter(together::has).map(FindingKey::of).toList();
    if (asked.isEmpty()) {
      return;
    }
    boolean oriented =
        asked.size() == ORIENTATION.size()
            && asked.stream().allMatch(key -> "oriented".equals(together.coded(key.code())));
    boolean awake =
        Integer.valueOf(4).equals(together.grade(Glasgow.EYE.code()))
            && Integer.valueOf(6).equals(together.grade(Glasgow.MOTOR.code()));
    boolean lost = asked.stream().anyMatch(key -> !"oriented".equals(together.coded(key.code())));
    if (oriented && awake && !together.has(Glasgow.VERBAL.code())) {
      var from = new ArrayList<>(asked);
      from.add(Glasgow.EYE);
      from.add(Glasgow.MOTOR);
      derived.add(alert("E4, M6 and full orientation, which is V5: 15 is alert", from));
    } else if (lost) {
      questions.add(
          new Question(
              CODE, "an orientation is lost: is that new for this patient? Record ACVPU", asked));
    } else {
      questions.add(new Question(CODE, "orientation does not say how awake: record ACVPU", asked));
    }
  }

  private static Derived alert(String formula, List<FindingKey> from) {
    return new Derived(Finding.coded(CODE, "alert"), formula, Glasgow.SOURCE, from);
  }
}
