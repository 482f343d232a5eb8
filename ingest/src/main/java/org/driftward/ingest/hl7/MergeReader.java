package org.driftward.ingest.hl7;

import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.EncounterChange.Merge;
import org.driftward.ingest.contract.EncounterChange.ReplacePatient;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.core.PatientEncounters;
import org.driftward.ingest.core.Rule;

/**
 * ADT A40: the number in MRG is given up for the one in PID. Where a visit number is given up too
 * (MRG-5 for PV1-19), the two stays become one; every other stay of the old number only changes its
 * owner. Groups of PID, MRG and PV1 may repeat. Thread-safe.
 */
final class MergeReader {

  private final PatientReader patients;
  private final EncounterDirectory directory;
  private final PatientEncounters encounters;

  MergeReader(PatientReader patients, EncounterDirectory directory, PatientEncounters encounters) {
    this.patients = patients;
    this.directory = directory;
    this.encounters = encounters;
  }

  void read(Hl7Message message, Content into) {
    var segments = message.segments();
    Optional<Hl7Segment> pid = Optional.empty();
    boolean any = false;
    for (int i = 0; i < segments.size(); i++) {
      var segment = segments.get(i);
      if (segment.is("PID")) {
        pid = Optional.of(segment);
      } else if (segment.is("MRG") && pid.isPresent()) {
        any = true;
        merge(pid.get(), segment, visit(segments, i), into);
      }
    }
    if (!any) {
      into.fault("/MRG/1", Rule.MISSING_FIELD, "PID and MRG are needed");
    }
  }

  /** PV1-19 of the same group; empty where the group has no PV1. */
  private static String visit(List<Hl7Segment> segments, int mrg) {
    for (int i = mrg + 1; i < segments.size() && !segments.get(i).is("PID"); i++) {
      if (segments.get(i).is("PV1")) {
        return segments.get(i).value(19);
      }
    }
    return "";
  }

  private void merge(Hl7Segment pid, Hl7Segment mrg, String survivor, Content into) {
    var patient = patients.patient(pid, into);
    var from = patients.number(mrg, 1, into);
    if (patient.isEmpty() || from.isEmpty()) {
      return;
    }
    var givenUp = mrg.value(5);
    boolean stays = !givenUp.isEmpty() && !survivor.isEmpty() && !givenUp.equals(survivor);
    if (stays && survives(survivor, patient.get(), from.get(), mrg, into)) {
      into.changes.add(new ReplacePatient(survivor, from.get(), patient.get()));
      into.changes.add(new Merge(givenUp, from.get(), patient.get(), survivor));
    }
    encounters.of(from.get()).stream()
        .map(Encounter::id)
        .filter(id -> !stays || !(id.equals(givenUp) || id.equals(survivor)))
        .map(id -> (EncounterChange) new ReplacePatient(id, from.get(), patient.get()))
        .forEach(into.changes::add);
  }

  /** Checked before anything changes: a stay must not be merged into nothing. */
  private boolean survives(
      String survivor, Patient patient, String from, Hl7Segment mrg, Content into) {
    var known = directory.find(survivor);
    if (known.isEmpty()) {
      into.fault("/PV1/1/19", Rule.UNKNOWN_ENCOUNTER, survivor + " is not known");
    } else if (!List.of(patient.id(), from).contains(known.get().patient().id())) {
      into.fault("/PV1/1/19", Rule.OTHER_PATIENT, survivor + " is another patient's");
    } else if (known.get().mergedInto() != null || known.get().cancelled() != null) {
      into.fault("/PV1/1/19", Rule.MERGED_ENCOUNTER, survivor + " does not survive itself");
    } else if (directory.find(mrg.value(5)).isEmpty()) {
      into.fault(mrg.pointer(5), Rule.UNKNOWN_ENCOUNTER, mrg.value(5) + " is not known");
    } else {
      return true;
    }
    return false;
  }
}
