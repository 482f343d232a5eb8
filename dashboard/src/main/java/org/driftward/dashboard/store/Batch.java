package org.driftward.dashboard.store;

import java.util.List;
import java.util.Set;
import java.util.TreeSet;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;

/** Records of the topics that are kept in one transaction, in any order, repeated or not. */
public record Batch(
    List<Encounter> encounters,
    List<CarePlan> carePlans,
    List<Assessment> assessments,
    List<Snapshot> snapshots,
    List<EpisodeChange> episodes) {
  public Batch {
    encounters = List.copyOf(encounters);
    carePlans = List.copyOf(carePlans);
    assessments = List.copyOf(assessments);
    snapshots = List.copyOf(snapshots);
    episodes = List.copyOf(episodes);
  }

  /** Every encounter it speaks about. */
  Set<String> touched() {
    var touched = new TreeSet<String>();
    encounters.forEach(encounter -> touched.add(encounter.id()));
    carePlans.forEach(plan -> touched.add(plan.encounter()));
    assessments.forEach(assessment -> touched.add(assessment.encounter()));
    snapshots.forEach(snapshot -> touched.add(snapshot.encounter()));
    episodes.forEach(change -> touched.add(change.episode().encounter()));
    return touched;
  }

  @Override
  public String toString() {
    return "Batch[" + touched().size() + " encounters]";
  }
}
