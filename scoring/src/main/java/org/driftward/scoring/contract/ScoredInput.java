package org.driftward.scoring.contract;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One input of a score and the points it earned, with everything a person needs to check it.
 *
 * @param code the input's code in the score definition
 * @param value as recorded, before rounding
 * @param unit UCUM, or null for grades and words
 * @param takenAt when the value was true; its age is {@code asOf} less this
 * @param band the band it fell into, in words, for example {@code 21 to 24}
 * @param row the row of the published table
 * @param source the published table
 * @param derivedFrom how the value was derived from other findings, or null if recorded as such
 */
public record ScoredInput(
    String code,
    Scalar value,
    @Nullable String unit,
    Instant takenAt,
    int points,
    String band,
    String row,
    String source,
    @Nullable String derivedFrom) {
  public ScoredInput {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(takenAt, "takenAt");
    Objects.requireNonNull(band, "band");
    Objects.requireNonNull(row, "row");
    Objects.requireNonNull(source, "source");
  }
}
