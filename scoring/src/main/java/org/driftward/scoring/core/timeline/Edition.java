package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.util.Objects;

/**
 * A policy with its score definitions, in force for what was taken from a stated time on.
 *
 * @param version of the policy; names the edition in every snapshot that it makes
 * @param from clinical time, inclusive
 */
public record Edition(String version, Instant from, Judge judge) {

  public Edition {
    Objects.requireNonNull(version, "version");
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(judge, "judge");
  }

  @Override
  public String toString() {
    return "Edition[" + version + " from " + from + "]";
  }
}
