package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.Objects;
import org.driftward.ingest.contract.Encounter;
import org.jspecify.annotations.Nullable;

/**
 * Where a patient is.
 *
 * @param present whether the patient is in the house
 * @param version of the encounter it was read from; 0 before any was
 * @param admitted when the patient came; null where that is not known
 */
public record Place(
    String ward, @Nullable String bed, boolean present, long version, @Nullable Instant admitted) {

  /**
   * Where a patient is whose snapshot came before the admission. Concern about somebody must not
   * wait for the news which bed it is.
   */
  public static final Place UNASSIGNED = new Place("unassigned", null, true, 0, null);

  public Place {
    Objects.requireNonNull(ward, "ward");
  }

  static Place of(Encounter encounter) {
    return new Place(
        encounter.ward(),
        encounter.bed(),
        encounter.present(),
        encounter.version(),
        encounter.admitted());
  }

  boolean sameBedAs(Place other) {
    return ward.equals(other.ward) && Objects.equals(bed, other.bed);
  }
}
