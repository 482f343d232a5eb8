package org.driftward.scoring.edition;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * An edition as it travels: the texts of its files. What it does not name stays as in the files
 * that the application was started with.
 *
 * @param from clinical time from which it is in force
 * @param policy text of the policy file; its {@code version} names the edition
 * @param scores texts of score definitions; one with the id of another takes its place
 * @param by account that adopted it, or null while nobody has
 * @param adoptedAt or null likewise
 */
public record EditionFile(
    Instant from,
    String policy,
    List<String> scores,
    @Nullable String by,
    @Nullable Instant adoptedAt) {

  public EditionFile {
    Objects.requireNonNull(from, "from");
    Objects.requireNonNull(policy, "policy");
    scores = scores == null ? List.of() : List.copyOf(scores);
  }

  public EditionFile adopted(String account, Instant now) {
    return new EditionFile(from, policy, scores, account, now);
  }

  @Override
  public String toString() {
    return "EditionFile[from " + from + "]";
  }
}
