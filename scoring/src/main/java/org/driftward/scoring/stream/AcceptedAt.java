package org.driftward.scoring.stream;

import java.nio.charset.StandardCharsets;
import java.time.Instant;
import org.apache.kafka.common.header.Headers;
import org.jspecify.annotations.Nullable;

/** The record header in which intake says when it acknowledged: epoch milliseconds as text. */
final class AcceptedAt {

  static final String HEADER = "accepted-at";

  private AcceptedAt() {}

  /** Null where the record does not say; it is for measuring only, so nonsense is no fault. */
  static @Nullable Instant of(Headers headers) {
    var header = headers.lastHeader(HEADER);
    if (header == null || header.value() == null) {
      return null;
    }
    try {
      var text = new String(header.value(), StandardCharsets.US_ASCII);
      return Instant.ofEpochMilli(Long.parseLong(text));
    } catch (NumberFormatException e) {
      return null;
    }
  }
}
