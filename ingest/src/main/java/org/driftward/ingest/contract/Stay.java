package org.driftward.ingest.contract;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A stretch of an encounter in one bed.
 *
 * @param bed or null while none is assigned
 * @param from clinical time of the arrival
 */
public record Stay(String ward, @Nullable String bed, Instant from) {
  public Stay {
    Objects.requireNonNull(ward, "ward");
    Objects.requireNonNull(from, "from");
  }
}
