package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.core.trigger.Trigger;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * After a person has closed an episode, what that person has seen opens no new one for a while.
 *
 * @param answered the level of each rule that was seen
 */
public record Quiet(Instant until, Map<String, Level> answered) {
  public Quiet {
    answered = Map.copyOf(answered);
  }

  boolean covers(List<Trigger> fired, Instant now) {
    return now.isBefore(until)
        && fired.stream().noneMatch(t -> isNews(answered, t.rule(), t.level()));
  }

  /** Whether the rule was not seen before, or only at a lower level. */
  static boolean isNews(Map<String, Level> answered, String rule, Level level) {
    @Nullable Level seen = answered.get(rule);
    return seen == null || seen.compareTo(level) < 0;
  }
}
