package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.Objects;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * Something that happened to a patient and that the audit counts.
 *
 * @param ward where the patient was when it was recorded
 * @param at when it happened
 * @param enteredAt when it was recorded; a late entry keeps both
 * @param notForResuscitation whether an order not to resuscitate was in force
 * @param expected whether a death was expected, or a move planned
 */
public record ClinicalEvent(
    String id,
    String encounter,
    String ward,
    Kind kind,
    Instant at,
    Instant enteredAt,
    String by,
    boolean notForResuscitation,
    boolean expected,
    @Nullable String note) {

  public enum Kind implements Word {
    ARREST,
    INTENSIVE_CARE,
    DEATH,
    /** A critical intervention on the ward that stands in no record of a call. */
    INTERVENTION
  }

  public ClinicalEvent {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(ward, "ward");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(by, "by");
    if (at.isAfter(enteredAt)) {
      throw new IllegalArgumentException("an event that has not happened yet");
    }
  }

  @Override
  public String toString() {
    return "ClinicalEvent[" + id + " " + kind.word() + "]";
  }
}
