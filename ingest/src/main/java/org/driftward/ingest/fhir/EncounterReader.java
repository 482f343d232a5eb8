package org.driftward.ingest.fhir;

import ca.uhn.fhir.model.api.TemporalPrecisionEnum;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.util.Date;
import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.core.Rule;
import org.hl7.fhir.r4.model.HumanName;
import org.jspecify.annotations.Nullable;

/** An Encounter with its Patient and Locations becomes a bed move. Thread-safe. */
final class EncounterReader {

  private final EncounterDirectory directory;
  private final Clock clock;

  EncounterReader(EncounterDirectory directory, Clock clock) {
    this.directory = directory;
    this.clock = clock;
  }

  /**
   * Reads the Encounter into {@code into}: a bed move, or faults, or nothing where it puts nobody
   * into a bed: a visit that is only planned, or never had a ward.
   *
   * @param condition create it only if it is not known, or null
   */
  void read(
      org.hl7.fhir.r4.model.Encounter encounter,
      String pointer,
      References references,
      @Nullable String condition,
      Converted into) {
    var id = References.number(encounter);
    if (id.isEmpty()) {
      into.fault(pointer + "/identifier", Rule.MISSING_FIELD, "An Encounter needs a number");
      return;
    }
    var known = directory.find(id.get());
    if (condition != null) {
      var own = Condition.deciding(encounter.getIdentifier());
      if (!Condition.holds(condition, own, pointer, into) || known.isPresent()) {
        return;
      }
    }
    if (known.isEmpty() && !began(encounter)) {
      return;
    }
    var patient = patient(encounter, references).or(() -> known.map(Encounter::patient));
    if (patient.isEmpty()) {
      into.fault(
          pointer + "/subject", Rule.MISSING_FIELD, "An Encounter needs a Patient with a number");
      return;
    }
    put(encounter, id.get(), patient.get(), known, pointer, references, into);
  }

  private void put(
      org.hl7.fhir.r4.model.Encounter encounter,
      String id,
      Patient patient,
      Optional<Encounter> known,
      String pointer,
      References references,
      Converted into) {
    var place = Place.of(encounter.getLocation(), references);
    var ward = Optional.ofNullable(place.ward()).or(() -> known.map(Encounter::ward));
    if (ward.isEmpty()) {
      return;
    }
    boolean sameWard = known.isPresent() && known.get().ward().equals(ward.get());
    var bed = place.bed() == null && sameWard ? known.get().bed() : place.bed();
    var now = clock.instant();
    var admitted =
        instant(encounter.getPeriod().getStart())
            .or(() -> known.map(Encounter::admitted))
            .orElse(now);
    // A move of a known patient that does not say when it was is told as it happens.
    var since = place.since() != null ? place.since() : known.isPresent() ? now : admitted;
    var discharged = end(encounter);
    if (discharged != null && discharged.isBefore(admitted)) {
      into.fault(
          pointer + "/period", Rule.DISCHARGED_BEFORE_ADMITTED, "The period ends before it starts");
      return;
    }
    into.add(
        pointer,
        new EncounterChange.Put(id, patient, ward.get(), bed, since, admitted, discharged));
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
    return born.getValue() != null && born.getPrecision() == TemporalPrecisionEnum.DAY
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

  private static boolean began(org.hl7.fhir.r4.model.Encounter encounter) {
    var status = encounter.getStatus();
    return status == null
        || switch (status) {
          case PLANNED, CANCELLED, ENTEREDINERROR -> false;
          default -> true;
        };
  }

  /** What was cancelled or never was ends like what is finished: the bed is free. */
  private @Nullable Instant end(org.hl7.fhir.r4.model.Encounter encounter) {
    var status = encounter.getStatus();
    boolean over =
        status != null
            && switch (status) {
              case FINISHED, CANCELLED, ENTEREDINERROR -> true;
              default -> false;
            };
    return over ? instant(encounter.getPeriod().getEnd()).orElseGet(clock::instant) : null;
  }

  private static Optional<Instant> instant(@Nullable Date date) {
    return Optional.ofNullable(date).map(Date::toInstant);
  }
}
