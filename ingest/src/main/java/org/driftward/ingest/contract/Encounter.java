package org.driftward.ingest.contract;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One hospital stay: who, and where. The key of every topic.
 *
 * @param stays every bed so far, oldest first, never empty; the last one is where the patient is
 * @param discharged or null while the patient is in the house
 * @param mergedInto the surviving encounter after a merge, or null
 * @param cancelled when the admission was called off, or null; such a stay never was
 * @param version counts the changes of this encounter from 1; of two versions the higher wins
 */
public record Encounter(
    String id,
    Patient patient,
    List<Stay> stays,
    Instant admitted,
    @Nullable Instant discharged,
    @Nullable String mergedInto,
    @Nullable Instant cancelled,
    long version) {

  public Encounter {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(patient, "patient");
    Objects.requireNonNull(admitted, "admitted");
    stays = List.copyOf(stays);
    if (stays.isEmpty()) {
      throw new IllegalArgumentException("encounter " + id + " is in no bed");
    }
    if (discharged != null && discharged.isBefore(admitted)) {
      throw new IllegalArgumentException("encounter " + id + " was discharged before admission");
    }
  }

  /** A stay that nobody called off. */
  public Encounter(
      String id,
      Patient patient,
      List<Stay> stays,
      Instant admitted,
      @Nullable Instant discharged,
      @Nullable String mergedInto,
      long version) {
    this(id, patient, stays, admitted, discharged, mergedInto, null, version);
  }

  public String ward() {
    return current().ward();
  }

  public @Nullable String bed() {
    return current().bed();
  }

  public Stay current() {
    return stays.get(stays.size() - 1);
  }

  /** Whether the patient is in the house: neither discharged, nor merged away, nor called off. */
  public boolean present() {
    return discharged == null && mergedInto == null && cancelled == null;
  }

  @Override
  public String toString() {
    return "Encounter[" + id + " version " + version + "]";
  }
}
