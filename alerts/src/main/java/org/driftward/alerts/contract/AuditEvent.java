package org.driftward.alerts.contract;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Objects;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * What happened in the hospital that no feed tells: entered by a person, kept in the journal.
 *
 * @param id unique over the hospital
 * @param at when it happened
 * @param ward where
 * @param encounter of the patient, or null for what is about no single patient
 * @param place where the patient was
 * @param limitation whether an order not to resuscitate, or a ceiling below intensive care, was in
 *     force
 * @param expected whether a death was expected, or a move to intensive care planned
 * @param value the survey's mean score; days in intensive care of a move; hours of the team
 * @param answered how many answered the survey; nurse-shifts worked
 * @param asked how many were asked
 */
public record AuditEvent(
    String id,
    Kind kind,
    Instant at,
    String ward,
    @Nullable String encounter,
    Place place,
    boolean limitation,
    boolean expected,
    @Nullable BigDecimal value,
    @Nullable Integer answered,
    @Nullable Integer asked,
    @Nullable String note) {

  /** What happened. */
  public enum Kind implements Word {
    /** Of heart or breathing: resuscitation was called for. */
    ARREST,
    INTENSIVE_CARE_MOVE,
    DEATH,
    /** A critical intervention that stands in no record of a call. */
    INTERVENTION,
    /** A survey of the culture of safety. */
    SURVEY,
    /** How many nurse-shifts the ward had in the month of {@link AuditEvent#at()}. */
    STAFFING
  }

  /** Where the patient was. */
  public enum Place implements Word {
    WARD,
    INTENSIVE_CARE,
    EMERGENCY
  }

  public AuditEvent {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(at, "at");
    Objects.requireNonNull(ward, "ward");
    place = place == null ? Place.WARD : place;
    boolean aboutAPatient = kind != Kind.SURVEY && kind != Kind.STAFFING;
    if (aboutAPatient && encounter == null) {
      throw new IllegalArgumentException(
          "encounter is missing: " + kind.word() + " is a patient's");
    }
    if (kind == Kind.SURVEY && (value == null || answered == null || asked == null)) {
      throw new IllegalArgumentException("value, answered or asked is missing in a survey");
    }
    if (kind == Kind.STAFFING && answered == null) {
      throw new IllegalArgumentException("answered, the number of nurse-shifts, is missing");
    }
  }

  @Override
  public String toString() {
    return "AuditEvent[" + id + " " + kind.word() + "]";
  }
}
