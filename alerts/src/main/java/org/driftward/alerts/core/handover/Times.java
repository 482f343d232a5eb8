package org.driftward.alerts.core.handover;

import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.format.DateTimeFormatter;
import java.util.Locale;

/** Times in the hospital's zone, with the day where it is not today's. */
record Times(ZoneId zone) {

  private static final DateTimeFormatter TIME = DateTimeFormatter.ofPattern("HH:mm", Locale.UK);
  private static final DateTimeFormatter DAY = DateTimeFormatter.ofPattern("d MMM", Locale.UK);
  private static final DateTimeFormatter DATE =
      DateTimeFormatter.ofPattern("d MMM yyyy", Locale.UK);

  String of(Instant time, Instant now) {
    var there = time.atZone(zone);
    boolean today = there.toLocalDate().equals(now.atZone(zone).toLocalDate());
    return today ? TIME.format(there) : DAY.format(there) + " " + TIME.format(there);
  }

  String date(LocalDate date) {
    return DATE.format(date);
  }
}
