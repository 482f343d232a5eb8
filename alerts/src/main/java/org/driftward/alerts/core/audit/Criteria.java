package org.driftward.alerts.core.audit;

import java.util.Objects;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.CareHistory.ObservedSet;
import org.driftward.alerts.core.policy.ScoreResponse;
import org.driftward.alerts.core.policy.ScoreResponse.Reached;
import org.driftward.alerts.core.policy.TriggerPolicy;
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
    return set.score() != null
        && policy.response(set.score()).filter(response -> met(response, set)).isPresent();
  }

  private static boolean met(ScoreResponse response, ObservedSet set) {
    var single = response.single();
    return (single != null && calls(single.level()) && set.single() >= single.points())
        || (set.low() != null
            && response
                .reached(set.low(), "")
                .map(Reached::level)
                .filter(Criteria::calls)
                .isPresent());
  }

  private static boolean calls(Level level) {
    return level != Level.LOW;
  }
}
