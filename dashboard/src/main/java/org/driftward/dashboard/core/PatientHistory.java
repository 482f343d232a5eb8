package org.driftward.dashboard.core;

import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Assessment;
import org.driftward.scoring.contract.Snapshot;

/**
 * What was found, and what scoring made of it, over a stretch of an encounter.
 *
 * @param assessments newest first by the time they were taken, each in its newest revision, the
 *     retracted ones among them
 * @param snapshots newest first by clinical time, without the withdrawn ones
 * @param complete whether nothing was left off for length
 */
public record PatientHistory(
    String encounter, List<Assessment> assessments, List<Snapshot> snapshots, boolean complete) {
  public PatientHistory {
    Objects.requireNonNull(encounter, "encounter");
    assessments = List.copyOf(assessments);
    snapshots = List.copyOf(snapshots);
  }

  @Override
  public String toString() {
    return "PatientHistory[" + encounter + "]";
  }
}
