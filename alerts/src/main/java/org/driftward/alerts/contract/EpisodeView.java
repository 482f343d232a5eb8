package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * An episode as every HTTP answer shows it, the board's and the patient's too: the reasons in
 * words.
 *
 * @param audience whom the present rung calls, in words; whether anybody was reached, {@code told}
 *     says
 * @param told whom the present alarm has reached beyond the board; empty where that is nobody
 * @param reasons in words, gravest first
 * @param triggers the same with rule, level and time, for programs
 */
public record EpisodeView(
    String id,
    long version,
    String encounter,
    String ward,
    @Nullable String bed,
    EpisodeState state,
    Level level,
    @Nullable String owner,
    @Nullable String ownerName,
    Instant openedAt,
    @Nullable Instant due,
    @Nullable Awaiting awaiting,
    int rung,
    String audience,
    List<Told> told,
    List<String> reasons,
    List<Reason> triggers,
    @Nullable Instant acknowledgedAt,
    @Nullable Instant attendedAt,
    @Nullable Instant closedAt,
    @Nullable String closedBecause) {

  /**
   * @param present the deliveries of the present alarm
   */
  public static EpisodeView of(Episode episode, List<Delivery> present) {
    return new EpisodeView(
        episode.id(),
        episode.version(),
        episode.encounter(),
        episode.ward(),
        episode.bed(),
        episode.state(),
        episode.level(),
        episode.owner(),
        episode.ownerName(),
        episode.openedAt(),
        episode.due(),
        episode.awaiting(),
        episode.rung(),
        episode.audience(),
        Told.among(present),
        episode.reasons().stream().map(Reason::words).toList(),
        episode.reasons(),
        episode.acknowledgedAt(),
        episode.attendedAt(),
        episode.closedAt(),
        episode.closedBecause());
  }
}
