package org.driftward.alerts.core.outreach;

import java.time.Instant;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.policy.Ladder;
import org.driftward.alerts.core.policy.Rung;

/**
 * An alarm: a change of an episode of which people must be told.
 *
 * @param sequence of its journal entry
 * @param at when it was raised, wall clock
 */
public record Notice(long sequence, Episode episode, Rung rung, Instant at) {

  /** Changes after which somebody has to come who had not been called like this before. */
  private static final Set<String> ALARMS =
      Set.of(
          "opened",
          "raised",
          "reopened",
          "called-again",
          "hold-ended",
          "escalated",
          "owner-left",
          "passed-on",
          "transferred");

  public Notice {
    Objects.requireNonNull(episode, "episode");
    Objects.requireNonNull(rung, "rung");
    Objects.requireNonNull(at, "at");
  }

  /** Empty where nobody is to be called: the change is no alarm, or the episode is held. */
  public static Optional<Notice> of(
      long sequence, EpisodeChanged changed, Ladder ladder, Instant at) {
    var episode = changed.episode();
    if (!calls(changed.kind(), episode)) {
      return Optional.empty();
    }
    var rung = ladder.of(episode.level()).rung(episode.rung());
    return Optional.of(new Notice(sequence, episode, rung, at));
  }

  /** Whether a change of this kind, after which the episode stands so, calls people. */
  public static boolean calls(String kind, Episode after) {
    return after.state() == EpisodeState.OPEN && ALARMS.contains(kind);
  }

  /** When the rung's time is over and the ladder climbs by itself. */
  public Instant due() {
    return Objects.requireNonNull(episode.due(), "an open episode has a clock");
  }
}
