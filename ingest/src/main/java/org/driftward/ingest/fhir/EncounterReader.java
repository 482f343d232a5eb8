package org.driftward.ingest.fhir;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.core.Rule;
import org.hl7.fhir.r4.model.Encounter.EncounterLocationComponent;
import org.hl7.fhir.r4.model.Encounter.EncounterStatus;
import org.hl7.fhir.r4.model.HumanName;
import org.hl7.fhir.r4.model.Location;
import org.jspecify.annotations.Nullable;

/**
 * An Encounter with its Patient and Locations becomes a bed move. Ward and bed are the names of the
 * locations whose physical type is ward ({@code wa}) and bed ({@code bd}), codes of HL7's
 * location-physical-type; a location without a type is taken for the ward.
 */
final class EncounterReader {

  private static final String WARD = "wa";
  private static final String BED = "bd";

  private final EncounterDirectory directory;
  private final Clock clock;

  EncounterReader(EncounterDirectory directory, Clock clock) {
    this.directory = directory;
    this.clock = clock;
  }

  void read(
      org.hl7.fhir.r4.model.Encounter encounter,
      String pointer,
      References references,
      Converted into) {
    var id = References.number(encounter);
    var patient = patient(encounter, references);
    if (id.isEmpty() || patient.isEmpty()) {
      into.fault(
          pointer, Rule.MISSING_FIELD, "An Encounter needs a number, and a Patient that has one");
      return;
    }
    var known = directory.find(id.get());
    var ward = place(encounter, references, WARD).or(() -> known.map(Encounter::ward));
    if (ward.isEmpty()) {
      // Nothing to put on a board: common for visits that never had a bed.
      return;
    }
    var admitted = start(encounter).or(() -> known.map(Encounter::admitted));
    var from = admitted.orElseGet(clock::instant);
    var bed = place(encounter, references, BED).or(() -> known.map(Encounter::bed)).orElse(null);
    into.changes.add(
        new EncounterChange.Put(
            id.get(), patient.get(), ward.get(), bed, from, from, end(encounter)));
  }

  private static Optional<Patient> patient(
      org.hl7.fhir.r4.model.Encounter encounter, References references) {
    var resource = references.patientResource(encounter.getSubject());
    return references
        .patient(encounter.getSubject())
        .map(
            number ->
                resource
                    .map(found -> patient(number, found))
                    .orElseGet(() -> new Patient(number, null, null, null)));
  }

  private static Patient patient(String number, org.hl7.fhir.r4.model.Patient patient) {
    var sex =
        patient.getGender() == null
            ? null
            : switch (patient.getGender()) {
              case FEMALE -> Patient.Sex.FEMALE;
              case MALE -> Patient.Sex.MALE;
              case OTHER -> Patient.Sex.OTHER;
              default -> Patient.Sex.UNKNOWN;
            };
    return new Patient(number, name(patient.getNameFirstRep()), born(patient), sex);
  }

  /** Null where only the year or the month is known. */
  private static @Nullable LocalDate born(org.hl7.fhir.r4.model.Patient patient) {
    var born = patient.getBirthDateElement();
    return born.getPrecision() == TemporalPrecisionEnum.DAY
        ? LocalDate.parse(born.getValueAsString())
        : null;
  }

  private static @Nullable String name(HumanName name) {
    if (!name.hasFamily()) {
      return name.hasText() ? name.getText() : null;
    }
    var given = name.getGivenAsSingleString();
    return given.isBlank() ? name.getFamily() : name.getFamily() + ", " + given;
  }

  private static Optional<String> place(
      org.hl7.fhir.r4.model.Encounter encounter, References references, String type) {
    return encounter.getLocation().stream()
        .filter(location -> type.equals(type(location, references)))
        .map(location -> placeName(location, references))
        .filter(name -> name != null)
        .reduce((earlier, later) -> later);
  }

  private static String type(EncounterLocationComponent location, References references) {
    var stated = location.getPhysicalType().getCodingFirstRep().getCode();
    if (stated != null) {
      return stated;
    }
    return references
        .location(location.getLocation())
        .map(Location::getPhysicalType)
        .map(physical -> physical.getCodingFirstRep().getCode())
        .orElse(WARD);
  }

  private static @Nullable String placeName(
      EncounterLocationComponent location, References references) {
    var resource = references.location(location.getLocation());
    return resource
        .map(found -> found.hasName() ? found.getName() : found.getIdentifierFirstRep().getValue())
        .or(() -> Optional.ofNullable(location.getLocation().getDisplay()))
        .orElse(null);
  }

  private static Optional<Instant> start(org.hl7.fhir.r4.model.Encounter encounter) {
    return Optional.ofNullable(encounter.getPeriod().getStart()).map(date -> date.toInstant());
  }

  private @Nullable Instant end(org.hl7.fhir.r4.model.Encounter encounter) {
    if (encounter.getStatus() != EncounterStatus.FINISHED) {
      return null;
    }
    var end = encounter.getPeriod().getEnd();
    return end == null ? clock.instant() : end.toInstant();
  }
}
