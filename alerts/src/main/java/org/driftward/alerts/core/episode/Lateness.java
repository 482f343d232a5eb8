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
 * @param lastSet clinical time of the newest set, or null if there was none
 * @param due when the next one is
 * @param interval between the two; before the first set, from admission
 * @param step how many of the policy's steps of lateness have been passed
 */
public record Lateness(@Nullable Instant lastSet, Instant due, Duration interval, int step) {

  /**
   * Somebody who has never been measured is late by the same steps, from admission on; an admission
   * of long ago that is heard of only now leaves the sets that come with it the time to arrive.
   */
  static Lateness first(Instant admitted, Duration within, Instant now) {
    var due = admitted.plus(within);
    return new Lateness(null, due.isBefore(now) ? now : due, within, 0);
  }

  /**
   * The same watch goes on while the same set is due, and while a picture is no set and asks for
   * none.
   */
  static @Nullable Lateness after(@Nullable Lateness before, Snapshot snapshot) {
    var due = snapshot.nextDue();
    if (due == null) {
      return before;
    }
    if (before != null && before.due.equals(due)) {
      return before;
    }
    var lastSet = snapshot.lastSet();
    var interval = snapshot.interval();
    if (interval == null) {
      interval = Duration.between(lastSet == null ? snapshot.asOf() : lastSet, due);
    }
    return new Lateness(lastSet, due, interval, 0);
  }

  boolean isDueAt(Instant now) {
    return !due.isAfter(now);
  }

  /**
   * When the next step of lateness is reached, or null where no lateness counts. The last step
   * comes again after every further interval: nobody is forgotten by whoever closed over a missing
   * set.
   */
  @Nullable Instant next(List<OverdueStep> steps) {
    if (steps.isEmpty()) {
      return null;
    }
    double past = reached(steps).past() + Math.max(0, step - steps.size() + 1);
    return due.plusMillis(Math.round(interval.toMillis() * past));
  }

  /** The step that is reached then. */
  OverdueStep reached(List<OverdueStep> steps) {
    return steps.get(Math.min(step, steps.size() - 1));
  }

  Lateness oneStepOn() {
    return new Lateness(lastSet, due, interval, step + 1);
  }
}
