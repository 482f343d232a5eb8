package org.driftward.alerts.core.policy;

import java.time.Duration;
import java.util.Set;

/**
 * What a care plan may say.
 *
 * @param longest how long a plan may run before it must be signed again
 * @param shortestInterval between sets of observations
 * @param longestInterval between sets of observations
 * @param signers account roles that may sign
 */
public record PlanRules(
    Duration longest, Duration shortestInterval, Duration longestInterval, Set<String> signers) {

  public PlanRules {
    Durations.positive("longest", longest);
    Durations.positive("shortest-interval", shortestInterval);
    signers = Set.copyOf(signers);
    if (shortestInterval.compareTo(longestInterval) > 0) {
      throw new IllegalArgumentException(
          "shortest interval " + shortestInterval + " is above the longest, " + longestInterval);
    }
    if (signers.isEmpty()) {
      throw new IllegalArgumentException("nobody may sign a care plan");
    }
  }
}
