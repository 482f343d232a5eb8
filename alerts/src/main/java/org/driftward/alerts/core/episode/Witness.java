package org.driftward.alerts.core.episode;

import java.util.Objects;
import java.util.Optional;

/**
 * The assessments that a concern rests on; when both are withdrawn it rests on nothing.
 *
 * @param first id of the one that raised it in this episode
 * @param last id of the newest that met its rule
 */
public record Witness(String first, String last) {
  public Witness {
    Objects.requireNonNull(first, "first");
    Objects.requireNonNull(last, "last");
  }

  Witness joinedBy(String assessment) {
    return new Witness(first, assessment);
  }

  boolean isOnly(String assessment) {
    return first.equals(assessment) && last.equals(assessment);
  }

  /** What remains when an assessment was a mistake, or empty if nothing does. */
  Optional<Witness> without(String assessment) {
    if (isOnly(assessment)) {
      return Optional.empty();
    }
    return Optional.of(
        first.equals(assessment)
            ? new Witness(last, last)
            : last.equals(assessment) ? new Witness(first, first) : this);
  }
}
