package org.driftward.ingest.fhir;

import java.time.Clock;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.core.Rule;
import org.hl7.fhir.r4.model.Observation;
import org.jspecify.annotations.Nullable;

/**
 * One Observation becomes one assessment, with the finding it carries itself and those of its
 * components. So a later correction of the Observation is a revision of the assessment. The members
 * of a panel are Observations of their own, whether they stand beside it or are contained in it.
 */
final class ObservationReader {

  private final ObservationFindings findings;
  private final Clock clock;

  ObservationReader(Codings codings, Clock clock) {
    this.findings = new ObservationFindings(codings);
    this.clock = clock;
  }

  /**
   * Reads the Observation into {@code into}: an assessment, or faults, or a note that nothing in it
   * is known; nothing where nothing was measured, or where it only groups its members.
   *
   * @param pointer JSON pointer to the Observation in the request
   * @param by who sends
   * @param condition create it only if it does not exist, or null
   */
  void read(
      Observation observation,
      String pointer,
      References references,
      Reporter by,
      @Nullable String condition,
      Converted into) {
    var status = ObservationStatus.of(observation, pointer, into);
    one(observation, status, pointer, references, by, condition, into);
    for (var member : ContainedMembers.of(observation)) {
      var at = pointer + "/contained/" + member.index();
      var own = ObservationStatus.of(member.observation(), at, into);
      one(member.observation(), own, at, references, by, null, into);
    }
  }

  private void one(
      Observation observation,
      @Nullable Status status,
      String pointer,
      References references,
      Reporter by,
      @Nullable String condition,
      Converted into) {
    int faultsBefore = into.faults.size();
    var encounter = references.encounter(observation.getEncounter());
    if (encounter.isEmpty()) {
      into.fault(pointer + "/encounter", Rule.MISSING_FIELD, "No encounter can be made out");
    }
    var patient = references.patient(observation.getSubject());
    if (patient.isEmpty()) {
      into.fault(pointer + "/subject", Rule.MISSING_FIELD, "No patient can be made out");
    }
    var takenAt = Moments.takenAt(observation.getEffective(), pointer, into);
    if (condition != null) {
      Condition.holds(condition, Condition.deciding(observation.getIdentifier()), pointer, into);
    }
    var found = found(observation, status, by.feed(), pointer, into);
    if (into.faults.size() > faultsBefore || status == null) {
      return;
    }
    boolean conditional = condition != null;
    if (conditional && status == Status.RETRACTED) {
      // Nothing is there that could be taken back.
      return;
    }
    boolean takenBack =
        status == Status.RETRACTED || (status == Status.AMENDED && found.isEmpty() && !conditional);
    if (found.isEmpty()
        && !(takenBack && findings.emptiness(observation, by.feed()).takesBack(status))) {
      noteEmpty(observation, by.feed(), pointer, into);
      return;
    }
    // Not known before, it is a first statement; known, the lowest revision changes nothing.
    var stated = conditional ? Status.FINAL : takenBack ? Status.RETRACTED : status;
    into.add(
        pointer,
        new Assessment(
            ObservationIdentity.id(observation, encounter.get(), takenAt),
            conditional ? 1 : ObservationIdentity.revision(observation),
            stated,
            encounter.get(),
            patient.get(),
            takenAt,
            observation.getIssued() == null ? clock.instant() : observation.getIssued().toInstant(),
            Assessment.Source.FHIR,
            performer(observation).orElse(by.account()),
            stated == Status.FINAL ? null : reason(observation),
            found));
  }

  /** What was entered in error may be unreadable, and is taken back all the same. */
  private List<Finding> found(
      Observation observation,
      @Nullable Status status,
      String feed,
      String pointer,
      Converted into) {
    if (status != Status.RETRACTED) {
      return findings.read(observation, feed, pointer, into);
    }
    var apart = new Converted();
    var readable = findings.read(observation, feed, pointer, apart);
    return apart.faults.isEmpty() ? readable : List.of();
  }

  private void noteEmpty(Observation observation, String feed, String pointer, Converted into) {
    switch (findings.emptiness(observation, feed)) {
      case UNKNOWN -> {
        // What has a value was noted where it stands.
        if (!ObservationFindings.hasAnyValue(observation)) {
          findings.unmapped(observation, feed, pointer, into);
        }
      }
      case UNSAID ->
          into.fault(
              pointer, Rule.MISSING_FIELD, "There is neither a value nor a dataAbsentReason");
      case NOT_MEASURED, GROUPS -> {}
    }
  }

  private static String reason(Observation observation) {
    return switch (observation.getStatus()) {
      case AMENDED -> "amended by the source";
      case CORRECTED -> "corrected by the source";
      case CANCELLED -> "cancelled by the source";
      default -> "entered in error";
    };
  }

  private static Optional<String> performer(Observation observation) {
    return observation.getPerformer().stream()
        .map(
            performer ->
                performer.hasIdentifier()
                    ? performer.getIdentifier().getValue()
                    : performer.getReferenceElement().getIdPart())
        .filter(name -> name != null)
        .findFirst();
  }
}
