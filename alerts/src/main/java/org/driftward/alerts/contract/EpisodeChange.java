package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One change of an episode, as the journal keeps it and {@code driftward.episodes} carries it.
 *
 * @param sequence of the journal entry; unique and rising over the hospital
 * @param at when it happened, wall clock
 * @param kind what happened: {@code opened}, {@code raised}, {@code lowered}, {@code
 *     reasons-changed}, {@code called-again}, {@code acknowledged}, {@code attended}, {@code
 *     handed-over}, {@code held}, {@code hold-ended}, {@code escalated}, {@code moved}, {@code
 *     transferred}, {@code passed-on}, {@code owner-left}, {@code closed}
 * @param by account, or {@code driftward} for the service itself
 * @param note what the person wrote, or null
 * @param reason why, where the action asks for one, or null
 * @param episode as it is after the change
 */
public record EpisodeChange(
    long sequence,
    Instant at,
    String kind,
    String by,
    @Nullable String note,
    @Nullable String reason,
    Episode episode) {
  public EpisodeChange {
    Objects.requireNonNull(at, "at");
    Objects.requireNonNull(kind, "kind");
    Objects.requireNonNull(by, "by");
    Objects.requireNonNull(episode, "episode");
  }
}
