package org.driftward.dashboard.screen;

import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk.Action;

/**
 * One thing the person may do to an episode.
 *
 * @param version of the episode the person is looking at
 */
public record Act(String episode, long version, Action action) {

  static Act of(Episode episode, Action action) {
    return new Act(episode.id(), episode.version(), action);
  }

  /** The last part of the path it is posted to. */
  public String word() {
    return action.word();
  }

  public boolean needsPerson() {
    return action == Action.HAND_OVER;
  }

  public boolean needsReason() {
    return action == Action.HOLD || action == Action.CLOSE;
  }

  public boolean needsEnd() {
    return action == Action.HOLD;
  }

  /** What the button says. */
  public String label() {
    return switch (action) {
      case ACKNOWLEDGE -> "Acknowledge";
      case ATTEND -> "At the bedside";
      case HAND_OVER -> "Hand over";
      case HOLD -> "Hold";
      case ESCALATE -> "Escalate";
      case CLOSE -> "Close";
    };
  }
}
