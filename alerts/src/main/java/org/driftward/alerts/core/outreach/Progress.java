package org.driftward.alerts.core.outreach;

import java.time.Duration;
import java.time.Instant;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.core.policy.Outreach;
import org.jspecify.annotations.Nullable;

/**
 * How a delivery stands after an attempt.
 *
 * @param next when it is tried again, or null
 * @param why in words, or null
 */
public record Progress(State state, @Nullable Instant next, @Nullable String why) {

  /**
   * @param made attempts, this one included
   * @param due when the rung's time is over: an attempt that comes later helps nobody
   * @param chance from 0 to 1
   */
  public static Progress after(
      Outcome outcome, int made, Instant due, Instant now, Outreach policy, double chance) {
    if (outcome instanceof Outcome.Taken) {
      return new Progress(State.DELIVERED, null, null);
    }
    if (outcome instanceof Outcome.Refused refused) {
      return new Progress(State.GIVEN_UP, null, refused.why());
    }
    var failed = (Outcome.Failed) outcome;
    if (made >= policy.attempts()) {
      return new Progress(State.GIVEN_UP, null, failed.why() + ", " + made + " attempts");
    }
    var next = now.plus(longer(pause(made, policy, chance), failed.after()));
    return next.isBefore(due)
        ? new Progress(State.FAILED, next, failed.why())
        : new Progress(State.GIVEN_UP, null, failed.why() + ", no time left for another attempt");
  }

  /** Doubles up to a bound; half of it is fixed and half by chance. */
  static Duration pause(int made, Outreach policy, double chance) {
    var pause = policy.firstPause();
    for (int i = 1; i < made && pause.compareTo(policy.longestPause()) < 0; i++) {
      pause = pause.multipliedBy(2);
    }
    long bound = Math.min(pause.toMillis(), policy.longestPause().toMillis());
    return Duration.ofMillis(bound / 2 + Math.round(bound / 2.0 * chance));
  }

  private static Duration longer(Duration one, @Nullable Duration other) {
    return other == null || one.compareTo(other) > 0 ? one : other;
  }
}
