package org.driftward.ingest.core;

import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;

/** What an encounter becomes when something happens to it. */
public final class Bookkeeping {

  private Bookkeeping() {}

  /** Why a change cannot happen to the newest known state; empty if it can. */
  public static List<Fault> check(Optional<Encounter> now, EncounterChange.Put put) {
    boolean otherPatient = now.isPresent() && !now.get().patient().id().equals(put.patient().id());
    return otherPatient
        ? List.of(
            new Fault(
                "/patient/id",
                Rule.OTHER_PATIENT.word(),
                "encounter " + put.encounter() + " is another patient's"))
        : List.of();
  }

  /**
   * @param now the newest known state
   * @return the next state, one version higher; or {@code now} itself if nothing changes
   */
  public static Encounter apply(Optional<Encounter> now, EncounterChange.Put put) {
    return now.map(known -> update(known, put)).orElseGet(() -> admit(put));
  }

  private static Encounter admit(EncounterChange.Put put) {
    var stay = new Stay(put.ward(), put.bed(), put.admitted());
    return new Encounter(
        put.encounter(), put.patient(), List.of(stay), put.admitted(), put.discharged(), null, 1);
  }

  private static Encounter update(Encounter known, EncounterChange.Put put) {
    var next =
        new Encounter(
            known.id(),
            filled(put.patient(), known.patient()),
            moved(known, put),
            put.admitted(),
            put.discharged(),
            known.mergedInto(),
            known.version());
    return next.equals(known)
        ? known
        : new Encounter(
            next.id(),
            next.patient(),
            next.stays(),
            next.admitted(),
            next.discharged(),
            next.mergedInto(),
            known.version() + 1);
  }

  /** A source that leaves out a name or birth date does not take back the one we know. */
  private static Patient filled(Patient told, Patient known) {
    return new Patient(
        told.id(),
        told.name() == null ? known.name() : told.name(),
        told.birthDate() == null ? known.birthDate() : told.birthDate(),
        told.sex() == null ? known.sex() : told.sex());
  }

  /** Stays follow one another: a move told late begins no earlier than the stay before it. */
  private static List<Stay> moved(Encounter known, EncounterChange.Put put) {
    var current = known.current();
    boolean sameBed = current.ward().equals(put.ward()) && Objects.equals(current.bed(), put.bed());
    if (sameBed) {
      return known.stays();
    }
    var from = put.since().isBefore(current.from()) ? current.from() : put.since();
    var stays = new ArrayList<>(known.stays());
    stays.add(new Stay(put.ward(), put.bed(), from));
    return stays;
  }
}
