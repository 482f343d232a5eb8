package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.Objects;
import org.driftward.alerts.contract.Reason;
import org.driftward.alerts.core.trigger.Trigger;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * A trigger that holds an episode open, whether or not the newest set still meets it.
 *
 * @param level at which it stands
 * @param seen the level that the newest set gave it, or null if that set did not meet it
 * @param words of the newest trigger that did
 * @param since clinical time of its first firing in this episode
 * @param lasting whether it takes sustained recovery to lay it to rest
 */
public record Concern(
    String rule, Level level, @Nullable Level seen, String words, Instant since, boolean lasting) {
  public Concern {
    Objects.requireNonNull(rule, "rule");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(words, "words");
    Objects.requireNonNull(since, "since");
  }

  static Concern of(Trigger trigger, Instant since) {
    return new Concern(
        trigger.rule(),
        trigger.level(),
        trigger.level(),
        trigger.words(),
        since,
        trigger.lasting());
  }

  Concern joinedBy(Trigger trigger, Level standing) {
    return new Concern(rule, standing, trigger.level(), trigger.words(), since, trigger.lasting());
  }

  Concern unseen(Level standing) {
    return new Concern(rule, standing, null, words, since, lasting);
  }

  Reason reason() {
    return new Reason(rule, level, words + remark(), since);
  }

  private String remark() {
    if (seen == null) {
      return "; not in the newest set, recovery has not lasted yet";
    }
    return seen == level ? "" : "; less now, recovery has not lasted yet";
  }
}
