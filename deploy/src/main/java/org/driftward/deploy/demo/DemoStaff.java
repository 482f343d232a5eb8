package org.driftward.deploy.demo;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ingest.contract.AccountRole;

/**
 * The nurse of the medical ward, who answers by herself after a while, so that the demo shows
 * answered episodes too. The surgical ward is left to the visitor.
 */
final class DemoStaff {

  private static final Duration TO_ACKNOWLEDGE = Duration.ofMinutes(6);
  private static final Duration TO_ATTEND = Duration.ofMinutes(11);

  private static final Actor NURSE =
      new Actor("charge.kestrel", "Bram Oosterveld", Set.of(AccountRole.CHARGE));

  private final EpisodeDesk desk;
  private final Clock clock;

  DemoStaff(EpisodeDesk desk, Clock clock) {
    this.desk = desk;
    this.clock = clock;
  }

  /** Answers what has waited long enough. */
  void makeRounds() {
    var answerable = Set.of(EpisodeState.OPEN, EpisodeState.ACKNOWLEDGED);
    for (var episode : desk.list(Set.of(DemoHospital.MEDICAL), answerable, null)) {
      if (episode.state() == EpisodeState.OPEN && waited(episode.openedAt(), TO_ACKNOWLEDGE)) {
        act(episode, Action.ACKNOWLEDGE, "On my way");
      } else if (episode.acknowledgedAt() != null && waited(episode.acknowledgedAt(), TO_ATTEND)) {
        act(episode, Action.ATTEND, "At the bedside");
      }
    }
  }

  private boolean waited(Instant since, Duration time) {
    return !since.plus(time).isAfter(clock.instant());
  }

  private void act(Episode episode, Action action, String note) {
    desk.act(
        new EpisodeDesk.Request(episode.id(), action, episode.version(), note, null, null, null),
        NURSE);
  }
}
