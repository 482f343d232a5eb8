package org.driftward.ingest.hl7;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.UUID;
import org.jspecify.annotations.Nullable;

/**
 * Which assessment a result is, and which revision of it, from the message alone: a repetition is
 * the same assessment, whoever answers it.
 */
final class ResultIdentity {

  private static final Instant REVISIONS_BEGIN = Instant.parse("2025-01-01T00:00:00Z");

  private ResultIdentity() {}

  /**
   * By what makes two results the same in chapter 7: the order (filler's number, else placer's),
   * the observation (OBX-3) and its sub-id (OBX-4); and by stay and time, because devices are known
   * to send every reading under one order number.
   */
  static String id(String encounter, @Nullable Hl7Segment obr, Hl7Segment obx, Instant takenAt) {
    var name =
        String.join(
            "|",
            encounter,
            order(obr),
            obx.value(3, 3),
            obx.value(3),
            obx.value(4),
            takenAt.toString());
    return "hl7-" + UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8));
  }

  private static String order(@Nullable Hl7Segment obr) {
    if (obr == null) {
      return "";
    }
    int field = obr.value(3).isEmpty() ? 2 : 3;
    return obr.value(field) + "^" + obr.value(field, 2);
  }

  /**
   * Four times the seconds from the year 2025 to when the message says it was made, plus the order
   * that the statuses have by themselves; so a status that changes without a new time still wins.
   */
  static int revision(@Nullable Instant made, ResultStatus status) {
    long seconds =
        made == null ? 0 : Math.max(0, Duration.between(REVISIONS_BEGIN, made).toSeconds());
    return (int) Math.min(Integer.MAX_VALUE, 4 * seconds + status.order());
  }
}
