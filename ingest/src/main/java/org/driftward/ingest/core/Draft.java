package org.driftward.ingest.core;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.jspecify.annotations.Nullable;

/**
 * An assessment as far as it could be read. What could not be read is null or left out, and {@code
 * faults} says so; the rules then look at the rest, so that one answer names everything.
 *
 * @param pointer where it stands in the request
 * @param faults what was wrong while reading
 */
public record Draft(
    String pointer,
    @Nullable String id,
    @Nullable Integer revision,
    @Nullable Status status,
    @Nullable String encounter,
    @Nullable String patient,
    @Nullable Instant takenAt,
    @Nullable Instant recordedAt,
    @Nullable Source source,
    @Nullable String by,
    @Nullable String reason,
    List<Placed> findings,
    List<Fault> faults) {

  /** A finding and where it stands in the request. */
  public record Placed(String pointer, Finding finding) {}

  public Draft {
    findings = List.copyOf(findings);
    faults = List.copyOf(faults);
  }

  /** A whole assessment, as an adapter of another format hands it in. */
  static Draft of(String pointer, Assessment whole) {
    var faults = new Faults();
    checkLine(pointer + "/id", whole.id(), faults);
    checkLine(pointer + "/encounter", whole.encounter(), faults);
    checkLine(pointer + "/patient", whole.patient(), faults);
    checkLine(pointer + "/by", whole.by(), faults);
    if (whole.reason() != null) {
      Texts.faultOfNote(whole.reason())
          .ifPresent(text -> faults.add(pointer + "/reason", Rule.MALFORMED_TEXT, "it " + text));
    }
    var findings = new ArrayList<Placed>();
    for (int i = 0; i < whole.findings().size(); i++) {
      findings.add(new Placed(pointer + "/findings/" + i, whole.findings().get(i)));
    }
    return new Draft(
        pointer,
        whole.id(),
        whole.revision(),
        whole.status(),
        whole.encounter(),
        whole.patient(),
        whole.takenAt(),
        whole.recordedAt(),
        whole.source(),
        whole.by(),
        whole.reason(),
        findings,
        faults.list());
  }

  private static void checkLine(String pointer, String line, Faults faults) {
    Texts.faultOfLine(line)
        .ifPresent(text -> faults.add(pointer, Rule.MALFORMED_TEXT, "it " + text));
  }

  /**
   * The assessment; only for a draft in which neither reading nor the rules found a fault.
   *
   * @throws NullPointerException or IllegalArgumentException if there was one
   */
  Assessment assessment() {
    return new Assessment(
        Objects.requireNonNull(id, "id"),
        Objects.requireNonNull(revision, "revision"),
        Objects.requireNonNull(status, "status"),
        Objects.requireNonNull(encounter, "encounter"),
        Objects.requireNonNull(patient, "patient"),
        Objects.requireNonNull(takenAt, "takenAt"),
        Objects.requireNonNull(recordedAt, "recordedAt"),
        Objects.requireNonNull(source, "source"),
        Objects.requireNonNull(by, "by"),
        reason,
        findings.stream().map(Placed::finding).toList());
  }

  /** Where it stands, never what it says about the patient. */
  @Override
  public String toString() {
    return "Draft[" + pointer + "]";
  }
}
