package org.driftward.dashboard.web.page;

import java.net.URLEncoder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.DateTimeException;
import java.time.Instant;
import java.time.YearMonth;
import java.time.ZoneId;
import java.util.Set;
import org.driftward.alerts.contract.AuditQuestion;
import org.jspecify.annotations.Nullable;

/**
 * Which ward and month a manager asks about.
 *
 * @param ward or null for every ward that the person sees
 */
record MonthAsked(@Nullable String ward, YearMonth month, ZoneId zone) {

  /** As it stands in a query; an unreadable month is this one. */
  static MonthAsked of(@Nullable String ward, @Nullable String month, Clock clock) {
    var chosen = ward == null || ward.isBlank() ? null : ward;
    return new MonthAsked(chosen, month(month, clock), clock.getZone());
  }

  private static YearMonth month(@Nullable String text, Clock clock) {
    try {
      return text == null || text.isBlank() ? YearMonth.now(clock) : YearMonth.parse(text);
    } catch (DateTimeException e) {
      return YearMonth.now(clock);
    }
  }

  boolean mayBeSeenBy(Visit visit) {
    return ward == null || visit.sees(ward);
  }

  MonthAsked in(YearMonth other) {
    return new MonthAsked(ward, other, zone);
  }

  MonthAsked on(String otherWard) {
    return new MonthAsked(otherWard, month, zone);
  }

  AuditQuestion question(Visit visit) {
    @Nullable Set<String> seen = ward == null ? visit.wards() : Set.of(ward);
    return AuditQuestion.of(seen, start(month), start(month.plusMonths(1)));
  }

  private Instant start(YearMonth of) {
    return of.atDay(1).atStartOfDay(zone).toInstant();
  }

  /** Of a page about the same ward and month. */
  String query() {
    return "?month=" + month + wardPart();
  }

  /** Of a call about the same ward and month. */
  String callQuery() {
    return "?from=" + start(month) + "&to=" + start(month.plusMonths(1)) + wardPart();
  }

  private String wardPart() {
    return ward == null ? "" : "&ward=" + URLEncoder.encode(ward, StandardCharsets.UTF_8);
  }
}
