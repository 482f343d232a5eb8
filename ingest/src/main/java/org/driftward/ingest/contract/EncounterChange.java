package org.driftward.ingest.contract;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/** Something that happened to an encounter, decided against its state at that moment. */
public sealed interface EncounterChange {

  /** The encounter it happened to. */
  String encounter();

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
}
