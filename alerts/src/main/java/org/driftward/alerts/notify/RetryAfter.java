package org.driftward.alerts.notify;

import java.net.http.HttpHeaders;
import java.time.DateTimeException;
import java.time.Duration;
import java.time.Instant;
import java.time.ZonedDateTime;
import java.time.format.DateTimeFormatter;
import org.jspecify.annotations.Nullable;

/** The header of RFC 9110, section 10.2.3: seconds, or a date. */
final class RetryAfter {

  private RetryAfter() {}

  /** Null where there is none, or none that makes sense. */
  static @Nullable Duration of(HttpHeaders headers, Instant now) {
    return headers.firstValue("Retry-After").map(text -> parse(text.strip(), now)).orElse(null);
  }

  private static @Nullable Duration parse(String text, Instant now) {
    if (text.matches("\\d{1,9}")) {
      return Duration.ofSeconds(Long.parseLong(text));
    }
    try {
      var then = ZonedDateTime.parse(text, DateTimeFormatter.RFC_1123_DATE_TIME).toInstant();
      return then.isAfter(now) ? Duration.between(now, then) : null;
    } catch (DateTimeException e) {
      return null;
    }
  }
}
