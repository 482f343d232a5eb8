package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;

/**
 * One patient with everything that was ever recorded of the stay.
 *
 * @param history of the whole stay, as far as its length allows
 */
public record StayRecord(PatientView view, PatientHistory history) {

  /** A value as it was last taken. */
  public record Taken(FindingValue value, Instant takenAt, String by) {}

  public StayRecord {
    Objects.requireNonNull(view, "view");
    Objects.requireNonNull(history, "history");
  }

  /** The newest value of each finding that counts. */
  public Map<FindingKey, Taken> newest() {
    var newest = new HashMap<FindingKey, Taken>();
    for (var assessment : history.assessments()) {
      if (!assessment.retracted()) {
        for (var finding : assessment.findings()) {
          newest.putIfAbsent(
              finding.key(), new Taken(finding.value(), assessment.takenAt(), assessment.by()));
        }
      }
    }
    return newest;
  }

  /** The newest revision of an assessment of this stay. */
  public Optional<Assessment> find(String assessment) {
    return history.assessments().stream().filter(one -> one.id().equals(assessment)).findFirst();
  }

  @Override
  public String toString() {
    return "StayRecord[" + view.encounter().id() + "]";
  }
}
