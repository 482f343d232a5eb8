package org.driftward.ingest.core;

import java.time.Instant;
import org.driftward.ingest.contract.Encounter;
import org.jspecify.annotations.Nullable;

/** What the encounter and the clock say about an assessment. */
final class StayRules {

  private final IntakeLimits limits;

  StayRules(IntakeLimits limits) {
    this.limits = limits;
  }

  /** Against the clock; also for an encounter that nobody knows. */
  void checkTimes(Draft draft, Instant now, Faults faults) {
    var takenAt = draft.takenAt();
    var recordedAt = draft.recordedAt();
    checkPast(takenAt, draft.pointer() + "/takenAt", now, faults);
    checkPast(recordedAt, draft.pointer() + "/recordedAt", now, faults);
    if (takenAt != null
        && recordedAt != null
        && recordedAt.isBefore(takenAt.minus(limits.clockSkew()))) {
      faults.add(
          draft.pointer() + "/recordedAt",
          Rule.RECORDED_BEFORE_TAKEN,
          "it was recorded before it was taken");
    }
  }

  void checkEncounter(Draft draft, Encounter encounter, Faults faults) {
    var patient = draft.patient();
    if (patient != null && !patient.equals(encounter.patient().id())) {
      faults.add(
          draft.pointer() + "/patient",
          Rule.OTHER_PATIENT,
          "encounter " + encounter.id() + " is another patient's");
    }
    if (encounter.mergedInto() != null) {
      faults.add(
          draft.pointer() + "/encounter",
          Rule.MERGED_ENCOUNTER,
          "encounter " + encounter.id() + " was merged into " + encounter.mergedInto());
    }
    if (encounter.cancelled() != null) {
      faults.add(
          draft.pointer() + "/encounter",
          Rule.CANCELLED_ENCOUNTER,
          "the admission of encounter " + encounter.id() + " was called off");
    }
    var takenAt = draft.takenAt();
    if (takenAt != null) {
      checkWithinStay(takenAt, draft.pointer() + "/takenAt", encounter, faults);
    }
  }

  private void checkWithinStay(
      Instant takenAt, String pointer, Encounter encounter, Faults faults) {
    if (takenAt.isBefore(encounter.admitted().minus(limits.beforeAdmission()))) {
      faults.add(
          pointer,
          Rule.BEFORE_ADMISSION,
          "taken more than "
              + (limits.beforeAdmission() + " before the admission at " + encounter.admitted()));
    }
    var discharged = encounter.discharged();
    if (discharged != null && takenAt.isAfter(discharged.plus(limits.clockSkew()))) {
      faults.add(pointer, Rule.AFTER_DISCHARGE, "taken after the discharge at " + discharged);
    }
  }

  private void checkPast(@Nullable Instant time, String pointer, Instant now, Faults faults) {
    if (time != null && time.isAfter(now.plus(limits.clockSkew()))) {
      faults.add(
          pointer,
          Rule.IN_THE_FUTURE,
          time + " lies more than " + limits.clockSkew() + " after our clock, " + now);
    }
  }
}
