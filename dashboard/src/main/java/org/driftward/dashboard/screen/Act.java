package org.driftward.dashboard.screen;

import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk.Action;

/**
 * One thing the person may do to an episode.
 *
 * @param word the last part of the path it is posted to
 * @param label on the button
 * @param version of the episode the person is looking at
 */
public record Act(String episode, long version, String word, String label) {

  static Act of(Episode episode, Action action) {
    return new Act(episode.id(), episode.version(), action.word(), label(action));
  }

  /** What the button says. */
  static String label(Action action) {
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
