package org.driftward.ingest.core;

import java.time.Instant;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.EncounterChange.Admit;
import org.driftward.ingest.contract.EncounterChange.CancelAdmission;
import org.driftward.ingest.contract.EncounterChange.CancelDischarge;
import org.driftward.ingest.contract.EncounterChange.CancelTransfer;
import org.driftward.ingest.contract.EncounterChange.Discharge;
import org.driftward.ingest.contract.EncounterChange.Merge;
import org.driftward.ingest.contract.EncounterChange.Put;
import org.driftward.ingest.contract.EncounterChange.ReplacePatient;
import org.driftward.ingest.contract.EncounterChange.Transfer;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.jspecify.annotations.Nullable;

/**
 * What an encounter becomes when something happens to it. Told twice, nothing happens twice: what a
 * sender repeats because it did not hear our answer leaves the encounter as it is.
 */
public final class Bookkeeping {

  private Bookkeeping() {}

  /** Why a change cannot happen to the newest known state; empty if it can. */
  public static List<Fault> check(Optional<Encounter> now, EncounterChange change) {
    if (now.isEmpty()) {
      return begins(change)
          ? List.of()
          : fault("/encounter", Rule.UNKNOWN_ENCOUNTER, change.encounter() + " is not known");
    }
    var known = now.get();
    if (!owners(change).contains(known.patient().id())) {
      return fault(
          "/patient/id",
          Rule.OTHER_PATIENT,
          "encounter " + change.encounter() + " is another patient's");
    }
    if (change instanceof Discharge discharge && discharge.at().isBefore(known.admitted())) {
      return fault(
          "/discharged",
          Rule.DISCHARGED_BEFORE_ADMITTED,
          "the discharge lies before the admission at " + known.admitted());
    }
    if (change instanceof Merge merge
        && (merge.into().equals(known.id())
            || (known.mergedInto() != null && !known.mergedInto().equals(merge.into())))) {
      return fault(
          "/encounter",
          Rule.MERGED_ENCOUNTER,
          "encounter " + known.id() + " cannot be merged into " + merge.into());
    }
    return List.of();
  }

  /**
   * @param now the newest known state, against which {@link #check} found nothing
   * @return the next state, one version higher; or {@code now} itself if nothing changes
   */
  public static Encounter apply(Optional<Encounter> now, EncounterChange change) {
    if (now.isEmpty()) {
      return begun(change);
    }
    var next = new NextEncounter(now.get());
    next.patient = filled(change.patient(), next.patient);
    happen(change, next);
    return next.encounter();
  }

  private static boolean begins(EncounterChange change) {
    return change instanceof Put || change instanceof Admit || change instanceof Transfer;
  }

  private static Encounter begun(EncounterChange change) {
    if (change instanceof Put put) {
      return begun(put, put.ward(), put.bed(), put.admitted(), put.discharged());
    }
    if (change instanceof Admit admit) {
      return begun(admit, admit.ward(), admit.bed(), admit.admitted(), null);
    }
    if (change instanceof Transfer transfer) {
      return begun(transfer, transfer.ward(), transfer.bed(), transfer.since(), null);
    }
    throw new IllegalArgumentException(change + " happens to no unknown encounter");
  }

  private static Encounter begun(
      EncounterChange change,
      String ward,
      @Nullable String bed,
      Instant admitted,
      @Nullable Instant discharged) {
    var stays = List.of(new Stay(ward, bed, admitted));
    return new Encounter(
        change.encounter(), change.patient(), stays, admitted, discharged, null, 1);
  }

  private static void happen(EncounterChange change, NextEncounter next) {
    if (change instanceof Put put) {
      next.stays = Stays.moved(next.stays, put.ward(), put.bed(), put.since());
      next.admitted = put.admitted();
      next.discharged = put.discharged();
      next.cancelled = null;
    } else if (change instanceof Admit admit) {
      admit(admit, next);
    } else if (change instanceof Transfer transfer) {
      next.stays =
          Stays.inserted(next.stays, new Stay(transfer.ward(), transfer.bed(), transfer.since()));
    } else if (change instanceof CancelTransfer none) {
      next.stays = Stays.takenBack(next.stays, none.ward(), none.bed(), none.at());
    } else if (change instanceof Discharge discharge) {
      next.discharged = discharge.at();
    } else if (change instanceof CancelDischarge) {
      next.discharged = null;
    } else if (change instanceof CancelAdmission cancel && next.cancelled == null) {
      next.cancelled = cancel.at();
    } else if (change instanceof Merge merge) {
      next.mergedInto = merge.into();
    }
  }

  /** An admission recorded after the discharge, or after it was called off, is a new one. */
  private static void admit(Admit admit, NextEncounter next) {
    var over = next.cancelled == null ? next.discharged : next.cancelled;
    if (over != null && !admit.told().isAfter(over)) {
      return;
    }
    next.stays = Stays.inserted(next.stays, new Stay(admit.ward(), admit.bed(), admit.admitted()));
    next.admitted = admit.admitted();
    next.discharged = null;
    next.cancelled = null;
  }

  /** The numbers that the encounter's patient may have for the change to be meant for it. */
  private static Set<String> owners(EncounterChange change) {
    var patient = change.patient().id();
    if (change instanceof ReplacePatient replace) {
      return new HashSet<>(List.of(patient, replace.from()));
    }
    return change instanceof Merge merge
        ? new HashSet<>(List.of(patient, merge.from()))
        : Set.of(patient);
  }

  /** A source that leaves out a name or birth date does not take back the one we know. */
  private static Patient filled(Patient told, Patient known) {
    return new Patient(
        told.id(),
        told.name() == null ? known.name() : told.name(),
        told.birthDate() == null ? known.birthDate() : told.birthDate(),
        told.sex() == null ? known.sex() : told.sex());
  }

  private static List<Fault> fault(String pointer, Rule rule, String detail) {
    return List.of(new Fault(pointer, rule.word(), detail));
  }
}
