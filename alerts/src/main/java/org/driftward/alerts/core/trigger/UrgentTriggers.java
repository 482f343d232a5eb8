package org.driftward.alerts.core.trigger;

import java.util.Map;
import org.driftward.alerts.core.policy.TriggerPolicy;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.UrgentFinding;

/**
 * Findings that call by themselves, beside every score. No altered limit keeps one quiet.
 * Somebody's worry is one of them.
 */
record UrgentTriggers(TriggerPolicy policy, Wording wording) {

  void gather(Snapshot snapshot, Gathering gathering) {
    snapshot.urgent().forEach(finding -> gather(finding, gathering));
  }

  private void gather(UrgentFinding finding, Gathering gathering) {
    if (policy.worries().contains(finding.code())) {
      var level = Severity.graver(policy.worry(), finding.level());
      gathering.fire(
          Trigger.worryOf(finding.code()),
          level,
          Triggers.said(finding.takenAt()),
          wording.urgent(finding));
      return;
    }
    var rule = "urgent-" + Series.of(finding.code(), finding.site(), finding.side());
    gathering.fire(
        rule, finding.level(), Map.of("beyond", finding.beyond()), wording.urgent(finding));
  }
}
