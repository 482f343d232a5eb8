package org.driftward.ingest.contract;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The findings that one person or device took of one patient at one time.
 *
 * <p>Identity is {@code id}; of two revisions the higher wins. A retraction removes the assessment
 * from every computation and leaves it visible in the history.
 *
 * @param id unique over the hospital
 * @param revision counts from 1
 * @param encounter the hospital stay it belongs to
 * @param patient the patient identifier, as the source gave it
 * @param takenAt clinical time: when the findings were true
 * @param recordedAt when somebody entered or sent them
 * @param by who took it: a person's or a device's identifier
 * @param reason why it was amended or retracted, or null
 * @param findings at most one for each {@link FindingKey}; may be empty only when retracted
 */
public record Assessment(
    String id,
    int revision,
    Status status,
    String encounter,
    String patient,
    Instant takenAt,
    Instant recordedAt,
    Source source,
    String by,
    @Nullable String reason,
    List<Finding> findings) {

  /** Where an assessment stands in its own life. */
  public enum Status implements Word {
    FINAL,
    AMENDED,
    RETRACTED
  }

  /** The way it came in. */
  public enum Source implements Word {
    BEDSIDE,
    HL7,
    FHIR,
    FILE,
    MONITOR
  }

  public Assessment {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(status, "status");
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(patient, "patient");
    Objects.requireNonNull(takenAt, "takenAt");
    Objects.requireNonNull(recordedAt, "recordedAt");
    Objects.requireNonNull(source, "source");
    Objects.requireNonNull(by, "by");
    findings = List.copyOf(findings);
    if (revision < 1) {
      throw new IllegalArgumentException("revision " + revision + " is below 1");
    }
    var keys = new HashSet<FindingKey>();
    for (var finding : findings) {
      if (!keys.add(finding.key())) {
        throw new IllegalArgumentException("a finding occurs twice");
      }
    }
    if (findings.isEmpty() && status != Status.RETRACTED) {
      throw new IllegalArgumentException("an assessment without findings");
    }
  }

  public boolean retracted() {
    return status == Status.RETRACTED;
  }

  /** Which record it is, never what it says about the patient. */
  @Override
  public String toString() {
    return "Assessment[" + id + " revision " + revision + " " + status.word() + "]";
  }
}
