package org.driftward.dashboard.web.page;

import java.time.DateTimeException;
import java.time.Instant;
import java.time.LocalDateTime;
import java.time.ZoneId;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.IntakeDesk.Filter;
import org.driftward.ingest.contract.Word;
import org.jboss.resteasy.reactive.RestQuery;
import org.jspecify.annotations.Nullable;

/** The filter of the refusals, as its form sends it. What makes no sense is no condition. */
public class RefusalQuery {

  @RestQuery public @Nullable String source;

  @RestQuery public @Nullable String rule;

  /** Local time of the hospital. */
  @RestQuery public @Nullable String from;

  /** Local time of the hospital. */
  @RestQuery public @Nullable String to;

  /** Anything at all: also those that were brought in since. */
  @RestQuery public @Nullable String all;

  @RestQuery public @Nullable String after;

  Filter filter(ZoneId zone) {
    return new Filter(
        source(source),
        words(rule),
        time(from, zone),
        time(to, zone),
        words(all) == null,
        words(after));
  }

  static @Nullable Source source(@Nullable String word) {
    try {
      return word == null ? null : Word.parse(Source.class, word);
    } catch (IllegalArgumentException e) {
      return null;
    }
  }

  static @Nullable Instant time(@Nullable String local, ZoneId zone) {
    try {
      return local == null || local.isBlank()
          ? null
          : LocalDateTime.parse(local).atZone(zone).toInstant();
    } catch (DateTimeException e) {
      return null;
    }
  }

  static @Nullable String words(@Nullable String field) {
    return field == null || field.isBlank() ? null : field;
  }
}
