package org.driftward.alerts.core.policy;

import java.time.Duration;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.driftward.ingest.contract.CatalogueEntry.Range;

/**
 * What a care plan may say.
 *
 * @param longest how long a plan may run before it must be signed again
 * @param shortestInterval between sets of observations
 * @param longestInterval between sets of observations
 * @param review how long a standing fact stands before somebody is asked to look at it again
 * @param bounds the findings whose limits may be altered, by code, and how far, in the catalogue's
 *     unit
 * @param signers account roles that may sign
 */
public record PlanRules(
    Duration longest,
    Duration shortestInterval,
    Duration longestInterval,
    Duration review,
    Map<String, Range> bounds,
    Set<String> signers) {

  public PlanRules {
    Durations.positive("longest", longest);
    Durations.positive("shortest-interval", shortestInterval);
    Durations.positive("review", review);
    bounds = Map.copyOf(bounds);
    signers = Set.copyOf(signers);
    if (shortestInterval.compareTo(longestInterval) > 0) {
      throw new IllegalArgumentException(
          "shortest interval " + shortestInterval + " is above the longest, " + longestInterval);
    }
    if (signers.isEmpty()) {
      throw new IllegalArgumentException("nobody may sign a care plan");
    }
  }

  /** Codes of the findings whose limits may be altered, in alphabetical order. */
  public Set<String> codes() {
    return new TreeSet<>(bounds.keySet());
  }
}
