package org.driftward.alerts.web;

import jakarta.ws.rs.QueryParam;
import java.time.DateTimeException;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.Instant;
import java.util.EnumSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.driftward.alerts.contract.AuditQuestion;
import org.jspecify.annotations.Nullable;

/** The parameters of a call about the measures. */
public final class AuditAsked {

  private static final Duration USUAL_STRETCH = Duration.ofDays(30);

  @QueryParam("ward")
  @Nullable String ward;

  @QueryParam("from")
  @Nullable String from;

  @QueryParam("to")
  @Nullable String to;

  @QueryParam("hour")
  @Nullable List<Integer> hours;

  @QueryParam("weekday")
  @Nullable List<String> weekdays;

  @QueryParam("scoreFrom")
  @Nullable Integer scoreFrom;

  @QueryParam("scoreTo")
  @Nullable Integer scoreTo;

  /**
   * Without times the thirty days before now.
   *
   * @param seen the wards that the account sees, or null for all
   */
  AuditQuestion question(@Nullable Set<String> seen, Instant now) {
    var end = to == null ? now : time("to", to);
    var begin = from == null ? end.minus(USUAL_STRETCH) : time("from", from);
    try {
      return new AuditQuestion(
          ward == null ? seen : Set.of(ward),
          begin,
          end,
          hours == null ? Set.of() : Set.copyOf(hours),
          days(),
          scoreFrom,
          scoreTo);
    } catch (IllegalArgumentException e) {
      throw Problems.refused("from", String.valueOf(e.getMessage()));
    }
  }

  private Set<DayOfWeek> days() {
    var days = EnumSet.noneOf(DayOfWeek.class);
    for (var word : weekdays == null ? List.<String>of() : weekdays) {
      try {
        days.add(DayOfWeek.valueOf(word.toUpperCase(Locale.ROOT)));
      } catch (IllegalArgumentException e) {
        throw Problems.refused("weekday", "is a day such as monday");
      }
    }
    return days;
  }

  static Instant time(String field, String text) {
    try {
      return Instant.parse(text);
    } catch (DateTimeException e) {
      throw Problems.refused(field, "is a time like 2026-01-05T03:10:00Z");
    }
  }
}
