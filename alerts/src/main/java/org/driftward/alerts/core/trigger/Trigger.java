package org.driftward.alerts.core.trigger;

import java.util.Objects;
import org.driftward.ingest.contract.Level;

/**
 * A rule that a picture of the patient meets.
 *
 * @param rule stable lower-case word with hyphens; where a rule can be met by several things it
 *     names the thing: {@code drift-heart-rate}
 * @param words the rule and what met it, as a person would say it
 * @param lasting whether it takes sustained recovery to lay it to rest; otherwise it is gone with
 *     the first set that does not meet it
 */
public record Trigger(String rule, Level level, String words, boolean lasting) {
  public Trigger {
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(words, "words");
  }

  @Override
  public String toString() {
    return "Trigger[" + rule + " " + level.word() + "]";
  }
}
