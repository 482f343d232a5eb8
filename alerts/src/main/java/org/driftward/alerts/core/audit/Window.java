package org.driftward.alerts.core.audit;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.driftward.alerts.contract.AuditQuestion;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.jspecify.annotations.Nullable;

/** What of the evidence a question is about. */
record Window(AuditQuestion question, ZoneId zone) {

  private static final double MILLIS_OF_A_DAY = Duration.ofDays(1).toMillis();

  boolean holds(Instant at, String ward) {
    return sees(ward) && holds(at);
  }

  boolean sees(String ward) {
    return question.wards() == null || question.wards().contains(ward);
  }

  boolean holds(Instant at) {
    return !at.isBefore(question.from()) && at.isBefore(question.to()) && onTime(at);
  }

  private boolean onTime(Instant at) {
    var local = at.atZone(zone);
    return (question.hours().isEmpty() || question.hours().contains(local.getHour()))
        && (question.weekdays().isEmpty() || question.weekdays().contains(local.getDayOfWeek()));
  }

  /** An unknown score is in no band. */
  boolean holdsScore(@Nullable BigDecimal score) {
    Integer from = question.scoreFrom();
    Integer to = question.scoreTo();
    if (from == null && to == null) {
      return true;
    }
    return score != null
        && (from == null || score.compareTo(BigDecimal.valueOf(from)) >= 0)
        && (to == null || score.compareTo(BigDecimal.valueOf(to)) <= 0);
  }

  /**
   * Days that beds were occupied, in the hours that count.
   *
   * @param until what has not been lived by then is not counted
   */
  double bedDays(List<Stay> stays, Instant until) {
    double millis = 0;
    for (var stay : stays) {
      if (sees(stay.ward())) {
        millis += occupied(stay, until);
      }
    }
    return millis / MILLIS_OF_A_DAY;
  }

  private double occupied(Stay stay, Instant until) {
    var from = later(stay.from(), question.from());
    var to = earlier(question.to(), until);
    if (stay.until() != null) {
      to = earlier(to, stay.until());
    }
    if (question.hours().isEmpty() && question.weekdays().isEmpty()) {
      return from.isBefore(to) ? Duration.between(from, to).toMillis() : 0;
    }
    double millis = 0;
    for (var at = from; at.isBefore(to); ) {
      var next =
          earlier(to, at.atZone(zone).truncatedTo(ChronoUnit.HOURS).plusHours(1).toInstant());
      millis += onTime(at) ? Duration.between(at, next).toMillis() : 0;
      at = next;
    }
    return millis;
  }

  private static Instant later(Instant one, Instant other) {
    return one.isAfter(other) ? one : other;
  }

  private static Instant earlier(Instant one, Instant other) {
    return one.isBefore(other) ? one : other;
  }
}
