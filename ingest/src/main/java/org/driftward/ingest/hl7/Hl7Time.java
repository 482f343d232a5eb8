package org.driftward.ingest.hl7;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Optional;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Times as HL7 v2 writes them, chapter 2A, DTM: {@code
 * YYYY[MM[DD[HH[MM[SS[.S[S[S[S]]]]]]]]][+/-ZZZZ]}.
 *
 * @param zone of a time that names no offset: that of MSH-7 if it has one, else the site's; null
 *     where neither is known, and then such a time is none
 * @param now resolves the hour that a clock set back repeats: the later one, unless it is yet to
 *     come
 */
record Hl7Time(@Nullable ZoneId zone, Instant now) {

  private static final Pattern MOMENT =
      Pattern.compile(
          "(\\d{4})(\\d{2})(\\d{2})(\\d{2})(\\d{2})(?:(\\d{2})(?:\\.(\\d{1,4}))?)?([+-]\\d{4})?");
  private static final Pattern DAY = Pattern.compile("(\\d{4})(\\d{2})(\\d{2}).*");
  private static final Pattern OFFSET = Pattern.compile("\\d{4,14}(?:\\.\\d{1,4})?([+-]\\d{4})");

  /** The offset that the time in the header gives to the whole message. */
  static @Nullable ZoneId zoneOf(String header, Optional<ZoneId> site) {
    var matcher = OFFSET.matcher(header);
    try {
      return matcher.matches() ? ZoneOffset.of(matcher.group(1)) : site.orElse(null);
    } catch (DateTimeException e) {
      return site.orElse(null);
    }
  }

  /** Empty if the text is no time to the minute, or nobody knows of which zone. */
  Optional<Instant> moment(String text) {
    var matcher = MOMENT.matcher(text);
    if (!matcher.matches()) {
      return Optional.empty();
    }
    try {
      var local =
          LocalDateTime.of(
              Integer.parseInt(matcher.group(1)),
              Integer.parseInt(matcher.group(2)),
              Integer.parseInt(matcher.group(3)),
              Integer.parseInt(matcher.group(4)),
              Integer.parseInt(matcher.group(5)),
              matcher.group(6) == null ? 0 : Integer.parseInt(matcher.group(6)),
              nanos(matcher.group(7)));
      var offset = matcher.group(8);
      return offset == null
          ? Optional.ofNullable(zone).flatMap(site -> inZone(local, site))
          : Optional.of(local.toInstant(ZoneOffset.of(offset)));
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** The day of a time of whatever precision; empty where only a month or a year is said. */
  static Optional<LocalDate> day(String text) {
    var matcher = DAY.matcher(text);
    try {
      return matcher.matches()
          ? Optional.of(
              LocalDate.of(
                  Integer.parseInt(matcher.group(1)),
                  Integer.parseInt(matcher.group(2)),
                  Integer.parseInt(matcher.group(3))))
          : Optional.empty();
    } catch (DateTimeException e) {
      return Optional.empty();
    }
  }

  /** A time that the clock jumps over is none. */
  private Optional<Instant> inZone(LocalDateTime local, ZoneId site) {
    var offsets = site.getRules().getValidOffsets(local);
    var moments = offsets.stream().map(local::toInstant).sorted().toList();
    if (moments.isEmpty()) {
      return Optional.empty();
    }
    var last = moments.get(moments.size() - 1);
    return Optional.of(last.isAfter(now) ? moments.get(0) : last);
  }

  private static int nanos(@Nullable String fraction) {
    return fraction == null ? 0 : Integer.parseInt((fraction + "00000000").substring(0, 9));
  }
}
