package org.driftward.dashboard.fhir;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.OffsetDateTime;
import java.time.Year;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.time.temporal.ChronoUnit;
import java.util.List;
import java.util.regex.Pattern;

/**
 * The search parameter {@code date} of FHIR R4: a prefix and a time that may be a year, month, day,
 * minute or second, which stands for the whole of it. Times without a zone are UTC.
 *
 * @param from inclusive
 * @param to exclusive
 */
record DateFilter(Instant from, Instant to) {

  static final DateFilter ALWAYS =
      new DateFilter(Instant.parse("0001-01-01T00:00:00Z"), Instant.parse("9999-12-31T00:00:00Z"));

  private static final Pattern SHAPE = Pattern.compile("([a-z]{2})?([0-9].*)");

  /**
   * All of them hold.
   *
   * @throws IllegalArgumentException with a message for the caller
   */
  static DateFilter of(List<String> parameters) {
    var filter = ALWAYS;
    for (var parameter : parameters) {
      filter = filter.and(one(parameter));
    }
    return filter;
  }

  private DateFilter and(DateFilter other) {
    return new DateFilter(
        from.isAfter(other.from) ? from : other.from, to.isBefore(other.to) ? to : other.to);
  }

  private static DateFilter one(String parameter) {
    var matcher = SHAPE.matcher(parameter);
    if (!matcher.matches()) {
      throw new IllegalArgumentException("date is a prefix and a time, for example ge2026-01-05");
    }
    var span = span(matcher.group(2));
    var prefix = matcher.group(1) == null ? "eq" : matcher.group(1);
    return switch (prefix) {
      case "eq" -> span;
      case "lt", "eb" -> new DateFilter(ALWAYS.from, span.from);
      case "le" -> new DateFilter(ALWAYS.from, span.to);
      case "gt", "sa" -> new DateFilter(span.to, ALWAYS.to);
      case "ge" -> new DateFilter(span.from, ALWAYS.to);
      default ->
          throw new IllegalArgumentException("date knows the prefixes eq, lt, le, gt, ge, sa, eb");
    };
  }

  private static DateFilter span(String time) {
    try {
      return switch (time.length()) {
        case 4 -> days(Year.parse(time).atDay(1), Year.parse(time).plusYears(1).atDay(1));
        case 7 ->
            days(YearMonth.parse(time).atDay(1), YearMonth.parse(time).plusMonths(1).atDay(1));
        case 10 -> days(LocalDate.parse(time), LocalDate.parse(time).plusDays(1));
        default -> moment(time);
      };
    } catch (DateTimeException e) {
      throw new IllegalArgumentException("date is no time like 2026-01-05T03:10:00Z", e);
    }
  }

  private static DateFilter days(LocalDate from, LocalDate to) {
    return new DateFilter(
        from.atStartOfDay(ZoneOffset.UTC).toInstant(), to.atStartOfDay(ZoneOffset.UTC).toInstant());
  }

  private static DateFilter moment(String time) {
    // A plus sign in an address is read as a blank.
    var text = time.replace(' ', '+');
    boolean zoned = text.matches(".*(Z|[+-][0-9]{2}:[0-9]{2})");
    var from = OffsetDateTime.parse(zoned ? text : text + "Z").toInstant();
    var unit =
        text.matches("[^.]{16}(Z|[+-].*)?")
            ? ChronoUnit.MINUTES
            : text.contains(".") ? ChronoUnit.MILLIS : ChronoUnit.SECONDS;
    return new DateFilter(from, from.plus(1, unit));
  }
}
