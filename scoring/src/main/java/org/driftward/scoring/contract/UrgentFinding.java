package org.driftward.scoring.contract;

import java.time.Instant;
import java.util.Objects;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Side;
import org.jspecify.annotations.Nullable;

/**
 * A finding whose newest value calls somebody by itself, beside every score: by a {@code call-now}
 * rule of the catalogue or a life-threatening value of the policy.
 *
 * @param unit UCUM, or null for grades and words
 * @param takenAt when the value was true
 * @param level the priority that the rule gives it
 * @param beyond how far the value lies past the rule's edge, in the smallest steps that count as a
 *     change of this finding; 0 at the edge. Only larger or smaller matters
 * @param words the rule and what met it, as a person would say it
 * @param source where the rule comes from, or {@code local policy}
 */
public record UrgentFinding(
    String code,
    @Nullable String site,
    @Nullable Side side,
    Scalar value,
    @Nullable String unit,
    Instant takenAt,
    Level level,
    double beyond,
    String words,
    String source) {
  public UrgentFinding {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(takenAt, "takenAt");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(source, "source");
    if (!(beyond >= 0)) {
      throw new IllegalArgumentException(code + " is urgent, and " + beyond + " past the edge");
    }
  }
}
