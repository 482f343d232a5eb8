package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.Objects;
import org.driftward.ingest.contract.Level;

/**
 * A trigger that holds an episode open.
 *
 * @param rule the policy rule that fired: a stable lower-case word with hyphens
 * @param level what it asks for by itself
 * @param words the rule and what met it, as a person would say it
 * @param since clinical time of its first firing in this episode
 */
public record Reason(String rule, Level level, String words, Instant since) {
  public Reason {
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(since, "since");
  }

  /** The rule, never the words. */
  @Override
  public String toString() {
    return "Reason[" + rule + "]";
  }
}
