package org.driftward.alerts.web;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeView;
import org.driftward.alerts.contract.Told;
import org.driftward.alerts.core.outreach.Notice;
import org.jspecify.annotations.Nullable;

/**
 * An episode with everything that happened to it, oldest first.
 *
 * @param told whom the present alarm has reached beyond the board
 * @param deliveries how far each alarm got with each recipient, the newest alarm first; {@code
 *     notice} is the {@code sequence} of the step that it tells of
 */
public record StoryView(
    EpisodeView episode, List<Step> story, List<Told> told, List<Delivery> deliveries) {

  /** One change: what, when, by whom, and how the episode stood afterwards. */
  public record Step(
      long sequence,
      Instant at,
      String kind,
      String by,
      @Nullable String note,
      @Nullable String reason,
      EpisodeView episode) {}

  static StoryView of(Episode episode, List<EpisodeChange> changes, List<Delivery> deliveries) {
    var byNotice = deliveries.stream().collect(Collectors.groupingBy(Delivery::notice));
    List<Delivery> present = List.of();
    var story = new ArrayList<Step>();
    for (var change : changes) {
      if (Notice.calls(change.kind(), change.episode())) {
        present = byNotice.getOrDefault(change.sequence(), List.of());
      }
      story.add(step(change, present));
    }
    return new StoryView(EpisodeView.of(episode, present), story, Told.among(present), deliveries);
  }

  private static Step step(EpisodeChange change, List<Delivery> present) {
    return new Step(
        change.sequence(),
        change.at(),
        change.kind(),
        change.by(),
        change.note(),
        change.reason(),
        EpisodeView.of(change.episode(), present));
  }
}
