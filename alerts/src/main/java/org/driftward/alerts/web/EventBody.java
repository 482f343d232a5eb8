package org.driftward.alerts.web;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.function.Supplier;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/** An event as a person or a program enters it; see {@link AuditEvent}. */
public record EventBody(
    @Nullable String id,
    @Nullable String kind,
    @Nullable Instant at,
    @Nullable String ward,
    @Nullable String encounter,
    @Nullable String place,
    @Nullable Boolean limitation,
    @Nullable Boolean expected,
    @Nullable BigDecimal value,
    @Nullable Integer answered,
    @Nullable Integer asked,
    @Nullable String note) {

  AuditEvent event(Supplier<String> newId) {
    if (at == null) {
      throw Problems.refused("at", "says when it happened");
    }
    if (ward == null || ward.isBlank()) {
      throw Problems.refused("ward", "says where it happened");
    }
    var what = parsed("kind", AuditEvent.Kind.class, kind == null ? "" : kind);
    var where = parsed("place", AuditEvent.Place.class, place == null ? "ward" : place);
    try {
      return new AuditEvent(
          id == null || id.isBlank() ? newId.get() : id,
          what,
          at,
          ward,
          encounter,
          where,
          Boolean.TRUE.equals(limitation),
          Boolean.TRUE.equals(expected),
          value,
          answered,
          asked,
          note);
    } catch (IllegalArgumentException e) {
      throw Problems.refused("kind", "asks for more: " + e.getMessage());
    }
  }

  private static <E extends Enum<E> & Word> E parsed(String field, Class<E> type, String word) {
    try {
      return Word.parse(type, word);
    } catch (IllegalArgumentException e) {
      throw Problems.refused(field, String.valueOf(e.getMessage()));
    }
  }
}
