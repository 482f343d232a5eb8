package org.driftward.dashboard.core;

import java.util.Objects;
import org.driftward.ingest.contract.Assessment;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * One assessment in its newest revision, and what scoring made of it.
 *
 * @param encounter in which it counts: where it was recorded, or what that was merged into
 * @param snapshot null where there is none yet, or where the assessment was retracted
 */
public record Moment(String encounter, Assessment assessment, @Nullable Snapshot snapshot) {
  public Moment {
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(assessment, "assessment");
  }

  @Override
  public String toString() {
    return "Moment[" + assessment.id() + "]";
  }
}
