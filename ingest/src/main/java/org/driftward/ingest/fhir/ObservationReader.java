package org.driftward.ingest.fhir;

import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.core.Rule;
import org.hl7.fhir.r4.model.BaseDateTimeType;
import org.hl7.fhir.r4.model.CodeableConcept;
import org.hl7.fhir.r4.model.InstantType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Period;
import org.hl7.fhir.r4.model.Type;
import org.jspecify.annotations.Nullable;

/**
 * One Observation becomes one assessment, with the finding it carries itself and those of its
 * components. So a later correction of the Observation is a revision of the assessment.
 */
final class ObservationReader {

  private final CodeMap codes;
  private final FindingReader values;
  private final Clock clock;

  ObservationReader(CodeMap codes, Clock clock) {
    this.codes = codes;
    this.values = new FindingReader(codes);
    this.clock = clock;
  }

  /**
   * Reads the Observation into {@code into}: an assessment, or faults, or a note that nothing in it
   * is known.
   *
   * @param pointer JSON pointer to the Observation in the request
   * @param by who sends, where the Observation names no performer
   */
  void read(
      Observation observation, String pointer, References references, String by, Converted into) {
    int faultsBefore = into.faults.size();
    var status = status(observation, pointer, into);
    var encounter = references.encounter(observation.getEncounter());
    if (encounter.isEmpty()) {
      into.fault(pointer + "/encounter", Rule.MISSING_FIELD, "No encounter can be made out");
    }
    var patient = references.patient(observation.getSubject());
    if (patient.isEmpty()) {
      into.fault(pointer + "/subject", Rule.MISSING_FIELD, "No patient can be made out");
    }
    var takenAt = effective(observation.getEffective(), pointer, into);
    var findings = findings(observation, pointer, into);
    if (into.faults.size() > faultsBefore) {
      return;
    }
    boolean retracted = status == Assessment.Status.RETRACTED;
    if (findings.isEmpty() && !retracted) {
      into.unmapped(pointer + "/code");
      return;
    }
    into.add(
        pointer,
        new Assessment(
            ObservationIdentity.id(observation, encounter.get(), takenAt),
            ObservationIdentity.revision(observation),
            status,
            encounter.get(),
            patient.get(),
            takenAt,
            recordedAt(observation),
            Assessment.Source.FHIR,
            performer(observation).orElse(by),
            retracted ? "entered in error" : null,
            findings));
  }

  private static Assessment.@Nullable Status status(
      Observation observation, String pointer, Converted into) {
    var status = observation.getStatus();
    if (status != null) {
      switch (status) {
        case FINAL, PRELIMINARY -> {
          return Assessment.Status.FINAL;
        }
        case AMENDED, CORRECTED -> {
          return Assessment.Status.AMENDED;
        }
        case ENTEREDINERROR, CANCELLED -> {
          return Assessment.Status.RETRACTED;
        }
        default -> {}
      }
    }
    into.fault(
        pointer + "/status",
        Rule.UNUSABLE_STATUS,
        "The status must be final, preliminary, amended, corrected, cancelled or entered-in-error");
    return null;
  }

  private @Nullable Instant effective(@Nullable Type effective, String pointer, Converted into) {
    if (effective instanceof InstantType instant && instant.getValue() != null) {
      return instant.getValue().toInstant();
    }
    var moment =
        effective instanceof Period period
            ? period.hasEnd() ? period.getEndElement() : period.getStartElement()
            : effective;
    if (moment instanceof BaseDateTimeType time
        && time.getValue() != null
        && time.getTimeZone() != null) {
      return time.getValue().toInstant();
    }
    into.fault(
        pointer + "/effectiveDateTime",
        Rule.MALFORMED_TIME,
        "When the observation was true, to the minute and with a time zone, is not said");
    return null;
  }

  private List<Finding> findings(Observation observation, String pointer, Converted into) {
    var found = new ArrayList<Finding>();
    if (!codes.isPanel(observation.getCode())) {
      finding(observation.getCode(), observation.getValue(), observation, pointer, into)
          .ifPresent(found::add);
    }
    var components = observation.getComponent();
    for (int i = 0; i < components.size(); i++) {
      var component = components.get(i);
      finding(
              component.getCode(),
              component.getValue(),
              observation,
              pointer + "/component/" + i,
              into)
          .ifPresent(found::add);
    }
    return found;
  }

  /** Empty where nothing was measured (a data-absent reason) or the code is not ours. */
  private Optional<Finding> finding(
      CodeableConcept code,
      @Nullable Type value,
      Observation observation,
      String pointer,
      Converted into) {
    var entry = codes.finding(code);
    if (entry.isEmpty() || value == null) {
      return Optional.empty();
    }
    var key = BodySite.key(entry.get(), observation, pointer, into);
    return key.flatMap(found -> values.read(entry.get(), found, value, pointer, into));
  }

  private Instant recordedAt(Observation observation) {
    return observation.hasIssued() ? observation.getIssued().toInstant() : clock.instant();
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
