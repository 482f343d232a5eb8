package org.driftward.dashboard.web.api;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Level;
import org.driftward.alerts.contract.Reason;
import org.jspecify.annotations.Nullable;

/** An episode as boards and patients show it; everything about it is at {@code /api/episodes}. */
record EpisodeJson(
    String id,
    long version,
    EpisodeState state,
    Level level,
    @Nullable String owner,
    @Nullable String ownerName,
    Instant openedAt,
    @Nullable Instant due,
    Episode.@Nullable Awaiting awaiting,
    int rung,
    String audience,
    List<String> reasons) {

  static @Nullable EpisodeJson of(@Nullable Episode episode) {
    return episode == null
        ? null
        : new EpisodeJson(
            episode.id(),
            episode.version(),
            episode.state(),
            episode.level(),
            episode.owner(),
            episode.ownerName(),
            episode.openedAt(),
            episode.due(),
            episode.awaiting(),
            episode.rung(),
            episode.audience(),
            episode.reasons().stream().map(Reason::words).toList());
  }
}
