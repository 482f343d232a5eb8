package org.driftward.scoring.core.plan;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * One set of vital signs: an assessment with enough of the core observations.
 *
 * @param takenAt clinical time
 * @param partial codes of the core observations it lacks, in the order of the policy
 */
public record VitalSet(Instant takenAt, List<String> partial) {

  public VitalSet {
    Objects.requireNonNull(takenAt, "takenAt");
    partial = List.copyOf(partial);
  }

  public boolean complete() {
    return partial.isEmpty();
  }
}
