package org.driftward.alerts.core.policy;

import java.time.Duration;
import java.util.Objects;
import java.util.Set;

/**
 * The escalation section of a hospital's policy.
 *
 * @param version as the hospital names it; the journal keeps it
 * @param backEntry a picture older than this when it comes in was entered late: it opens no episode
 * @param longestHold how long a person may let an episode rest
 * @param deciders account roles that may hold and close
 */
public record EscalationPolicy(
    String version,
    TriggerPolicy triggers,
    Recovery recovery,
    Ladder ladder,
    Duration backEntry,
    Duration longestHold,
    Set<String> deciders,
    PlanRules plans,
    ShiftRules shifts) {

  public EscalationPolicy {
    Objects.requireNonNull(version, "version");
    Objects.requireNonNull(triggers, "triggers");
    Objects.requireNonNull(recovery, "recovery");
    Objects.requireNonNull(ladder, "ladder");
    Objects.requireNonNull(plans, "plans");
    Objects.requireNonNull(shifts, "shifts");
    Durations.positive("back-entry", backEntry);
    Durations.positive("longest-hold", longestHold);
    deciders = Set.copyOf(deciders);
    if (deciders.isEmpty()) {
      throw new IllegalArgumentException("nobody may hold or close");
    }
  }
}
