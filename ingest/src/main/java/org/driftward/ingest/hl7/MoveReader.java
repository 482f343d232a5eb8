package org.driftward.ingest.hl7;

import java.time.Instant;
import java.util.Optional;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.EncounterChange.Admit;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.core.Rule;
import org.jspecify.annotations.Nullable;

/** ADT A01, A02, A03, A08, A11, A12 and A13: one event of one encounter. Thread-safe. */
final class MoveReader {

  private final SiteSettings settings;
  private final PatientReader patients;
  private final EncounterDirectory directory;

  MoveReader(SiteSettings settings, PatientReader patients, EncounterDirectory directory) {
    this.settings = settings;
    this.patients = patients;
    this.directory = directory;
  }

  void read(Hl7Message message, Hl7Time times, Content into) {
    var pid = message.first("PID");
    var pv1 = message.first("PV1");
    var evn = message.first("EVN");
    if (pid.isEmpty() || pv1.isEmpty() || evn.isEmpty()) {
      into.fault("", Rule.MISSING_FIELD, "EVN, PID and PV1 are needed");
      return;
    }
    var patient = patients.patient(pid.get(), into);
    var encounter =
        into.required(pv1.get(), 19, "The visit number")
            .flatMap(id -> PatientReader.checked(id, pv1.get().pointer(19), into));
    if (patient.isPresent() && encounter.isPresent()) {
      new Event(patient.get(), encounter.get(), evn.get(), pv1.get(), times, into)
          .read(message.header().event());
    }
  }

  /** One event while it is read. */
  private final class Event {
    private final Patient patient;
    private final String encounter;
    private final Hl7Segment evn;
    private final Hl7Segment pv1;
    private final Hl7Time times;
    private final Content into;

    Event(
        Patient patient,
        String encounter,
        Hl7Segment evn,
        Hl7Segment pv1,
        Hl7Time times,
        Content into) {
      this.patient = patient;
      this.encounter = encounter;
      this.evn = evn;
      this.pv1 = pv1;
      this.times = times;
      this.into = into;
    }

    void read(String event) {
      var change =
          switch (event) {
            case "A01" -> admit();
            case "A02" -> transfer();
            case "A03" -> discharge();
            case "A08" -> update();
            case "A11" -> told().map(at -> cancelAdmission(at));
            case "A12" -> cancelTransfer();
            case "A13" -> Optional.of(cancelDischarge());
            default -> throw new IllegalArgumentException("event " + event);
          };
      if (into.faults.isEmpty()) {
        change.ifPresent(into.changes::add);
      }
    }

    private EncounterChange cancelAdmission(Instant at) {
      return new EncounterChange.CancelAdmission(encounter, patient, at);
    }

    private EncounterChange cancelDischarge() {
      return new EncounterChange.CancelDischarge(encounter, patient);
    }

    private Optional<EncounterChange> admit() {
      var ward = ward();
      var told = told();
      var admitted = time(pv1, 44).or(this::happened);
      var bed = bed();
      return ward.isEmpty() || told.isEmpty() || admitted.isEmpty()
          ? Optional.empty()
          : Optional.of(new Admit(encounter, patient, ward.get(), bed, admitted.get(), told.get()));
    }

    private Optional<EncounterChange> transfer() {
      var ward = ward();
      var since = happened();
      var bed = bed();
      return ward.isEmpty() || since.isEmpty()
          ? Optional.empty()
          : Optional.of(
              new EncounterChange.Transfer(encounter, patient, ward.get(), bed, since.get()));
    }

    private Optional<EncounterChange> discharge() {
      return time(pv1, 45)
          .or(this::happened)
          .map(at -> new EncounterChange.Discharge(encounter, patient, at));
    }

    /** The first that is heard of an encounter admits it, if it says where the patient is. */
    private Optional<EncounterChange> update() {
      boolean known = directory.find(encounter).isPresent();
      return known || pv1.value(3).isEmpty()
          ? Optional.of(new EncounterChange.Update(encounter, patient))
          : admit();
    }

    private Optional<EncounterChange> cancelTransfer() {
      var ward = ward();
      var at = told();
      var bed = bed();
      return ward.isEmpty() || at.isEmpty()
          ? Optional.empty()
          : Optional.of(
              new EncounterChange.CancelTransfer(encounter, patient, ward.get(), bed, at.get()));
    }

    /** PV1-3.1, the point of care. */
    private Optional<String> ward() {
      return into.required(pv1, 3, "The ward")
          .flatMap(ward -> PatientReader.checked(ward, pv1.pointer(3), into));
    }

    /** Room and bed, PV1-3.2 and PV1-3.3, with a hyphen where both are said. */
    private @Nullable String bed() {
      var room = pv1.value(3, 2);
      var bed = pv1.value(3, 3);
      var name = room.isEmpty() || bed.isEmpty() ? room + bed : room + "-" + bed;
      return name.isEmpty() ? null : PatientReader.checked(name, pv1.pointer(3), into).orElse(null);
    }

    /** When the event happened, EVN-6; where nobody says, when it was recorded. */
    private Optional<Instant> happened() {
      return evn.value(6).isEmpty() ? told() : time(evn, 6);
    }

    private Optional<Instant> told() {
      into.required(evn, 2, "When it was recorded");
      return time(evn, 2);
    }

    /** Empty where the field is; also empty, with a fault, where it holds no time of ours. */
    private Optional<Instant> time(Hl7Segment segment, int field) {
      var text = segment.value(field);
      if (text.isEmpty()) {
        return Optional.empty();
      }
      var moment = times.moment(text);
      if (moment.isEmpty()) {
        into.fault(
            segment.pointer(field), Rule.MALFORMED_TIME, "Not a time to the minute, or of no zone");
      } else if (moment.get().isAfter(times.now().plus(settings.clockSkew()))) {
        into.fault(segment.pointer(field), Rule.IN_THE_FUTURE, "It lies after our clock");
      }
      return moment;
    }
  }
}
