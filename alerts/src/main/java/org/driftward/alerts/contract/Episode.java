package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * One period of concern about one encounter. Unless closed it has an owner or a running clock,
 * usually both.
 *
 * @param version counts the changes of this episode from 1; an action names the one it saw
 * @param owner account of the person responsible, or null while nobody has answered
 * @param ownerName the owner as people know them, or null
 * @param openedAt clinical time of the first trigger
 * @param due when the running clock ends, or null when closed
 * @param awaiting what must happen before {@code due}, or null when closed
 * @param rung how far up the ladder it has climbed, from 0
 * @param audience whom that rung calls, in words; not whether it reached them
 * @param reasons what holds it open now, gravest first
 * @param acknowledgedAt first acknowledgement, or null
 * @param attendedAt first arrival at the bedside, or null
 * @param closedAt or null
 * @param closedBecause why it was closed, in words, or null
 */
public record Episode(
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
    List<Reason> reasons,
    @Nullable Instant acknowledgedAt,
    @Nullable Instant attendedAt,
    @Nullable Instant closedAt,
    @Nullable String closedBecause) {

  /** What a running clock waits for. */
  public enum Awaiting implements Word {
    ACKNOWLEDGEMENT,
    ATTENDANCE,
    REASSESSMENT,
    HOLD_END
  }

  public Episode {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(state, "state");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(openedAt, "openedAt");
    reasons = List.copyOf(reasons);
    boolean over = state == EpisodeState.CLOSED;
    if (over != (due == null) || over != (awaiting == null)) {
      throw new IllegalArgumentException(
          "episode " + id + " is " + state.word() + " with due " + due + " for " + awaiting);
    }
  }

  public boolean isOver() {
    return state == EpisodeState.CLOSED;
  }

  @Override
  public String toString() {
    return "Episode[" + id + " " + state.word() + " " + level.word() + "]";
  }
}
