package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.core.trigger.Severity;
import org.driftward.alerts.core.trigger.Trigger;

/**
 * After a person has closed an episode, what that person has seen opens no new one for a while,
 * while it gets no worse.
 *
 * @param answered how bad the newest set then found each rule
 */
public record Quiet(Instant until, Map<String, Severity> answered) {
  public Quiet {
    answered = Map.copyOf(answered);
  }

  boolean covers(List<Trigger> fired, Instant now) {
    return now.isBefore(until)
        && fired.stream().noneMatch(t -> t.severity().worseThan(answered.get(t.rule())));
  }
}
