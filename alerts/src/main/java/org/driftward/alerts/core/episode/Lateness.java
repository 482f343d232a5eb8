package org.driftward.alerts.core.episode;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.core.policy.TriggerPolicy.OverdueStep;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * Watches over the next set of observations. Silence sends no message, so a wall clock must.
 *
 * @param lastSet clinical time of the newest set
 * @param due when the next one is
 * @param interval between the two
 * @param step how many of the policy's steps of lateness have been passed
 */
public record Lateness(Instant lastSet, Instant due, Duration interval, int step) {

  /** The same watch goes on while the same set is due. */
  static @Nullable Lateness after(@Nullable Lateness before, Snapshot snapshot) {
    var due = snapshot.nextDue();
    var lastSet = snapshot.lastSet();
    if (due == null || lastSet == null) {
      return null;
    }
    if (before != null && before.due.equals(due)) {
      return before;
    }
    var interval =
        snapshot.interval() == null ? Duration.between(lastSet, due) : snapshot.interval();
    return new Lateness(lastSet, due, interval, 0);
  }

  /** When the next step of lateness is reached, or null after the last one. */
  @Nullable Instant next(List<OverdueStep> steps) {
    if (step >= steps.size()) {
      return null;
    }
    return due.plusMillis(Math.round(interval.toMillis() * steps.get(step).past()));
  }

  Lateness oneStepOn() {
    return new Lateness(lastSet, due, interval, step + 1);
  }
}
