package org.driftward.scoring.web;

import java.time.Instant;
import java.util.List;
import org.driftward.scoring.edition.EditionFile;
import org.jspecify.annotations.Nullable;

/**
 * An edition as it is proposed.
 *
 * @param from clinical time from which it would be in force; required
 * @param policy text of the policy file; required, its {@code version} names the edition
 * @param scores texts of score definitions, none unless given
 */
public record EditionBody(
    @Nullable Instant from, @Nullable String policy, @Nullable List<String> scores) {

  EditionFile file() {
    if (from == null) {
      throw Problems.refused("from", "is required: an edition takes effect from a stated time");
    }
    if (policy == null) {
      throw Problems.refused("policy", "is required: its version names the edition");
    }
    return new EditionFile(from, policy, scores == null ? List.of() : scores, null, null);
  }
}
