package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;

/**
 * An episode in full: whose it is, what it waits for, why it is open, what happened, and what the
 * person may do.
 *
 * @param reasons gravest first
 * @param oneTouch actions that need no further word
 * @param worded actions that ask for a reason, a person or a time
 * @param story newest first
 * @param told how each alarm reached whom beyond the board, the newest alarm first
 */
public record EpisodePanel(
    String id,
    long version,
    Sign sign,
    boolean over,
    Hand hand,
    Countdown openFor,
    List<Cause> reasons,
    List<Act> oneTouch,
    List<Act> worded,
    List<StoryLine> story,
    List<ToldLine> told) {

  /** A reason with its own priority. */
  public record Cause(Sign sign, String words, Countdown since) {}

  public static EpisodePanel of(
      Episode episode,
      List<EpisodeChange> story,
      List<Delivery> told,
      Reader reader,
      Instant now,
      ZoneId zone) {
    return new EpisodePanel(
        episode.id(),
        episode.version(),
        Sign.of(episode.level()),
        episode.isOver(),
        Hand.of(episode),
        Countdown.since(episode.openedAt(), "open for"),
        episode.reasons().stream()
            .map(
                reason ->
                    new Cause(
                        Sign.of(reason.level()),
                        reason.words(),
                        Countdown.since(reason.since(), "for")))
            .toList(),
        Acts.oneTouch(episode, reader),
        Acts.worded(episode, reader),
        newestFirst(story, now, zone),
        told.stream().map(one -> ToldLine.of(one, now, zone)).toList());
  }

  private static List<StoryLine> newestFirst(List<EpisodeChange> story, Instant now, ZoneId zone) {
    return story.stream()
        .sorted((a, b) -> Long.compare(b.sequence(), a.sequence()))
        .map(change -> StoryLine.of(change, now, zone))
        .toList();
  }
}
