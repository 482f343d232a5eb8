package org.driftward.alerts.web;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeView;
import org.jspecify.annotations.Nullable;

/** An episode with everything that happened to it, oldest first. */
public record StoryView(EpisodeView episode, List<Step> story) {

  /** One change: what, when, by whom, and how the episode stood afterwards. */
  public record Step(
      long sequence,
      Instant at,
      String kind,
      String by,
      @Nullable String note,
      @Nullable String reason,
      EpisodeView episode) {}

  static StoryView of(Episode episode, List<EpisodeChange> changes) {
    return new StoryView(EpisodeView.of(episode), changes.stream().map(StoryView::step).toList());
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
