package org.driftward.alerts.contract;

import java.time.DayOfWeek;
import java.time.Instant;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a manager asks about.
 *
 * @param wards only these, or null for all
 * @param from inclusive
 * @param to exclusive
 * @param hours of the day in the hospital's time zone, 0 to 23; empty for all
 * @param weekdays in the hospital's time zone; empty for all
 * @param scoreFrom only what happened at this score of the leading score or above, or null. Counts
 *     of beds, patients and discharges have no score and stay whole
 * @param scoreTo likewise, at this score or below
 */
public record AuditQuestion(
    @Nullable Set<String> wards,
    Instant from,
    Instant to,
    Set<Integer> hours,
    Set<DayOfWeek> weekdays,
    @Nullable Integer scoreFrom,
    @Nullable Integer scoreTo) {

  public AuditQuestion {
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(to, "to");
    wards = wards == null ? null : Set.copyOf(wards);
    hours = Set.copyOf(hours);
    weekdays = Set.copyOf(weekdays);
    if (!from.isBefore(to)) {
      throw new IllegalArgumentException("from " + from + " is not before to " + to);
    }
    for (int hour : hours) {
      if (hour < 0 || hour > 23) {
        throw new IllegalArgumentException("hour " + hour + " is not from 0 to 23");
      }
    }
    if (scoreFrom != null && scoreTo != null && scoreFrom > scoreTo) {
      throw new IllegalArgumentException("score from " + scoreFrom + " is above " + scoreTo);
    }
  }

  /** Everything that happened on these wards. */
  public static AuditQuestion of(@Nullable Set<String> wards, Instant from, Instant to) {
    return new AuditQuestion(wards, from, to, Set.of(), Set.of(), null, null);
  }
}
