package org.driftward.alerts.core.audit;

import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.policy.Audience;

/** Reads out of the journal when the response team was told of an episode. */
public final class TeamCalls {

  private TeamCalls() {}

  /**
   * The first time in each episode.
   *
   * @param changes whole episodes, in the order of the journal
   */
  public static List<Call> of(List<EpisodeChange> changes) {
    var calls = new ArrayList<Call>();
    for (var story : AlarmList.byEpisode(changes).values()) {
      story.stream()
          .filter(change -> change.episode().state() == EpisodeState.OPEN)
          .filter(change -> change.episode().audience().contains(Audience.RESPONSE_TEAM.words()))
          .findFirst()
          .ifPresent(change -> calls.add(call(change)));
    }
    return calls;
  }

  private static Call call(EpisodeChange change) {
    var episode = change.episode();
    return new Call(
        episode.id(), episode.encounter(), episode.ward(), episode.openedAt(), change.at(), null);
  }
}
