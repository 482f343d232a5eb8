package org.driftward.alerts.web;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeView;
import org.jspecify.annotations.Nullable;

/**
 * An episode with everything that happened to it, oldest first.
 *
 * @param told who was told beyond the board and how far that got, the newest alarm first; {@code
 *     notice} is the {@code sequence} of the step that it tells of
 */
public record StoryView(EpisodeView episode, List<Step> story, List<Delivery> told) {

  /** One change: what, when, by whom, and how the episode stood afterwards. */
  public record Step(
      long sequence,
      Instant at,
      String kind,
      String by,
      @Nullable String note,
      @Nullable String reason,
      EpisodeView episode) {}

  static StoryView of(Episode episode, List<EpisodeChange> changes, List<Delivery> told) {
    var story = changes.stream().map(StoryView::step).toList();
    return new StoryView(EpisodeView.of(episode), story, told);
  }

  private static Step step(EpisodeChange change) {
    return new Step(
        change.sequence(),
        change.at(),
        change.kind(),
        change.by(),
        change.note(),
        change.reason(),
        EpisodeView.of(change.episode()));
  }
}
