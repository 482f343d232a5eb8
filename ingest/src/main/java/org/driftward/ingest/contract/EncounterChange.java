package org.driftward.ingest.contract;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Something that happened to an encounter, decided against its state at that moment. */
public sealed interface EncounterChange {

  /** The encounter it happened to. */
  String encounter();

  /** Whose it is; details that the sender leaves out stay as they are known. */
  Patient patient();

  /**
   * The whole state as the sender knows it: admits an unknown encounter, and moves, updates,
   * discharges or reopens a known one.
   *
   * @param since when the patient came to this bed; counts only if the bed is another than before
   * @param discharged or null while the patient is in the house
   */
  record Put(
      String encounter,
      Patient patient,
      String ward,
      @Nullable String bed,
      Instant since,
      Instant admitted,
      @Nullable Instant discharged)
      implements EncounterChange {
    public Put {
      Objects.requireNonNull(encounter, "encounter");
      Objects.requireNonNull(patient, "patient");
      Objects.requireNonNull(ward, "ward");
      Objects.requireNonNull(since, "since");
      Objects.requireNonNull(admitted, "admitted");
      if (discharged != null && discharged.isBefore(admitted)) {
        throw new IllegalArgumentException("discharged before admitted");
      }
    }

    /** The state of {@code encounter} now; its bed is that of the last stay. */
    public static Put of(Encounter encounter) {
      var stay = encounter.current();
      return new Put(
          encounter.id(),
          encounter.patient(),
          stay.ward(),
          stay.bed(),
          stay.from(),
          encounter.admitted(),
          encounter.discharged());
    }

    @Override
    public String toString() {
      return "Put[" + encounter + "]";
    }
  }

  /**
   * The patient came in. A repetition that arrives late does not undo what happened since.
   *
   * @param told when the admission was recorded; later than a discharge, it is a new admission
   */
  record Admit(
      String encounter,
      Patient patient,
      String ward,
      @Nullable String bed,
      Instant admitted,
      Instant told)
      implements EncounterChange {
    @Override
    public String toString() {
      return "Admit[" + encounter + "]";
    }
  }

  /**
   * The patient came to another bed. Told late, it takes its place among the stays before; of an
   * unknown encounter it is the admission.
   */
  record Transfer(
      String encounter, Patient patient, String ward, @Nullable String bed, Instant since)
      implements EncounterChange {
    @Override
    public String toString() {
      return "Transfer[" + encounter + "]";
    }
  }

  /** Details of the patient were mended. */
  record Update(String encounter, Patient patient) implements EncounterChange {
    @Override
    public String toString() {
      return "Update[" + encounter + "]";
    }
  }

  record Discharge(String encounter, Patient patient, Instant at) implements EncounterChange {
    @Override
    public String toString() {
      return "Discharge[" + encounter + "]";
    }
  }

  /** There was no admission. */
  record CancelAdmission(String encounter, Patient patient, Instant at) implements EncounterChange {
    @Override
    public String toString() {
      return "CancelAdmission[" + encounter + "]";
    }
  }

  /**
   * There was no transfer.
   *
   * @param ward where the patient really is
   */
  record CancelTransfer(
      String encounter, Patient patient, String ward, @Nullable String bed, Instant at)
      implements EncounterChange {
    @Override
    public String toString() {
      return "CancelTransfer[" + encounter + "]";
    }
  }

  /** There was no discharge. */
  record CancelDischarge(String encounter, Patient patient) implements EncounterChange {
    @Override
    public String toString() {
      return "CancelDischarge[" + encounter + "]";
    }
  }

  /**
   * Two numbers were one person's.
   *
   * @param from the number that is given up
   * @param patient the surviving one
   */
  record ReplacePatient(String encounter, String from, Patient patient) implements EncounterChange {
    @Override
    public String toString() {
      return "ReplacePatient[" + encounter + "]";
    }
  }

  /**
   * Two encounters were one. What was found in the one given up counts for the surviving one.
   *
   * @param encounter the one given up
   * @param from the patient's number that it had
   * @param patient the surviving one
   * @param into the surviving encounter
   */
  record Merge(String encounter, String from, Patient patient, String into)
      implements EncounterChange {
    @Override
    public String toString() {
      return "Merge[" + encounter + "]";
    }
  }
}
