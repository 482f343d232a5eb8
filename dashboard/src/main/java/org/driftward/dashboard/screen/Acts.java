package org.driftward.dashboard.screen;

import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;

/** What a page offers the person to do about an episode, the next natural action first. */
final class Acts {

  private Acts() {}

  /** Those that need no word of explanation: one touch, on a board too. */
  static List<Act> oneTouch(Episode episode, Reader reader) {
    var acts = new ArrayList<Act>();
    if (episode.isOver() || !reader.cares()) {
      return acts;
    }
    boolean own = reader.account().equals(episode.owner());
    boolean there = episode.state() == EpisodeState.ATTENDED && own;
    if (episode.state() == EpisodeState.OPEN || episode.state() == EpisodeState.HELD) {
      acts.add(Act.of(episode, Action.ACKNOWLEDGE));
    }
    if (!there) {
      acts.add(Act.of(episode, Action.ATTEND));
    }
    return acts;
  }

  /** Those that ask for a reason, a person or a time first. */
  static List<Act> worded(Episode episode, Reader reader) {
    var acts = new ArrayList<Act>();
    if (episode.isOver() || !reader.cares()) {
      return acts;
    }
    acts.add(Act.of(episode, Action.ESCALATE));
    if (episode.owner() != null) {
      acts.add(Act.of(episode, Action.HAND_OVER));
    }
    if (reader.decides()) {
      acts.add(Act.of(episode, Action.HOLD));
      if (episode.state() != EpisodeState.OPEN) {
        acts.add(Act.of(episode, Action.CLOSE));
      }
    }
    return acts;
  }
}
