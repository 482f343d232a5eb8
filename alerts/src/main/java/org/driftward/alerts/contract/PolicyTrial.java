package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Level;

/**
 * Two policies over the same recorded pictures.
 *
 * @param inForce what the policy in force makes of them
 * @param edited what the edited one does
 * @param kept episodes of the policy in force that the edited one raises as well
 * @param missed episodes of the policy in force that it does not raise
 * @param added episodes that only it raises
 * @param eventsInForce recorded arrests, moves to intensive care and deaths with an alarm of medium
 *     or high level in the 24 hours before
 * @param eventsEdited likewise by the edited policy
 * @param events all such events
 */
public record PolicyTrial(
    Outcome inForce,
    Outcome edited,
    List<Raised> kept,
    List<Raised> missed,
    List<Raised> added,
    int eventsInForce,
    int eventsEdited,
    int events) {

  public PolicyTrial {
    kept = List.copyOf(kept);
    missed = List.copyOf(missed);
    added = List.copyOf(added);
  }

  /**
   * @param version of the policy
   * @param alarms how often people would have been called
   * @param escalations how often a rung would have been climbed
   * @param bedDays occupied
   */
  public record Outcome(
      String version,
      int episodes,
      int high,
      int medium,
      int low,
      int alarms,
      int escalations,
      double bedDays) {

    public double alarmsPer100BedDays() {
      return bedDays == 0 ? 0 : 100 * alarms / bedDays;
    }
  }

  /**
   * An episode as a policy would have raised it.
   *
   * @param level the highest it reached
   * @param why the first reason, in words
   */
  public record Raised(
      String encounter, String ward, Instant openedAt, Instant until, Level level, String why) {}
}
