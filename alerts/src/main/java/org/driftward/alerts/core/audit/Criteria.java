package org.driftward.alerts.core.audit;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.Objects;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.CareHistory.ObservedSet;
import org.driftward.alerts.core.policy.TriggerPolicy;
import org.driftward.alerts.core.policy.TriggerPolicy.ScoreRule;
import org.driftward.ingest.contract.Level;

/** Whether a set met the criteria for a call: the policy's thresholds of medium level or above. */
final class Criteria {

  private Criteria() {}

  /** How many runs of sets in the day before an event met them. */
  static int periods(View view, AuditEvent event) {
    var policy = view.policy().triggers();
    var sets =
        view.setsOf(Objects.requireNonNull(event.encounter()))
            .subMap(event.at().minus(View.BEFORE), true, event.at(), true);
    int periods = 0;
    boolean before = false;
    for (var set : sets.values()) {
      boolean met = met(policy, set);
      periods += met && !before ? 1 : 0;
      before = met;
    }
    return periods;
  }

  private static boolean met(TriggerPolicy policy, ObservedSet set) {
    var single = policy.single();
    return (single != null && single.level() != Level.LOW && set.single() >= single.points())
        || (set.low() != null
            && policy.scores().stream()
                .filter(rule -> rule.score() == null && rule.level() != Level.LOW)
                .map(ScoreRule::at)
                .min(Comparator.<BigDecimal>naturalOrder())
                .filter(at -> set.low().compareTo(at) >= 0)
                .isPresent());
  }
}
