package org.driftward.scoring.core.timeline;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.time.Instant;
import java.util.Arrays;
import java.util.Objects;

/**
 * A place in the history of an encounter: when, and, where two assessments were taken at the same
 * time, which one. The order is total, so a history has one order whatever way it arrived in.
 *
 * @param assessment id; ties are broken by its UTF-8 bytes, the order a byte-sorted store keeps
 */
public record Moment(Instant takenAt, String assessment) implements Comparable<Moment> {
  public Moment {
    Objects.requireNonNull(takenAt, "takenAt");
    Objects.requireNonNull(assessment, "assessment");
  }

  @Override
  public int compareTo(Moment other) {
    int byTime = takenAt.compareTo(other.takenAt);
    return byTime != 0
        ? byTime
        : Arrays.compareUnsigned(assessment.getBytes(UTF_8), other.assessment.getBytes(UTF_8));
  }

  public boolean isBefore(Moment other) {
    return compareTo(other) < 0;
  }
}
