package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import org.driftward.alerts.contract.EpisodeChange;

/**
 * One thing that happened to an episode.
 *
 * @param note what the person wrote and why, or empty
 */
public record StoryLine(Instant at, String time, String what, String by, String note) {

  static StoryLine of(EpisodeChange change, Instant now, ZoneId zone) {
    return new StoryLine(
        change.at(),
        Wording.time(change.at(), now, zone),
        Wording.sentence(change.kind()),
        change.by(),
        note(change));
  }

  private static String note(EpisodeChange change) {
    String reason = change.reason() == null ? "" : change.reason();
    String note = change.note() == null ? "" : change.note();
    return reason.isEmpty() || note.isEmpty() ? reason + note : reason + ". " + note;
  }
}
