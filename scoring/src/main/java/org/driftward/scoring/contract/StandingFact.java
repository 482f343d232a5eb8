package org.driftward.scoring.contract;

import java.time.Instant;
import java.util.Objects;
import org.driftward.ingest.contract.Word;

/**
 * Who vouches for a fact of an encounter that does not end by itself. When {@code reviewBy} has
 * come somebody is asked to look at it again; until they do it holds.
 *
 * @param reason in words
 * @param signedBy account of the person with the role for it
 * @param signedAt wall clock
 */
public record StandingFact(
    Fact fact, String reason, String signedBy, Instant signedAt, Instant reviewBy) {

  /** What can stand so, named as in a care plan. */
  public enum Fact implements Word {
    OXYGEN_SCALE,
    POPULATIONS,
    USUAL_CONSCIOUSNESS,
    CEILING
  }

  public StandingFact {
    Objects.requireNonNull(fact, "fact");
    Objects.requireNonNull(reason, "reason");
    Objects.requireNonNull(signedBy, "signedBy");
    if (!signedAt.isBefore(reviewBy)) {
      throw new IllegalArgumentException("a review of " + fact.word() + " before it is signed");
    }
  }
}
