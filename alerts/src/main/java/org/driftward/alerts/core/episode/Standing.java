package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.Objects;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeState;
import org.jspecify.annotations.Nullable;

/**
 * Where an episode stands. Unless closed its clock runs; whoever has answered is its owner.
 *
 * @param owner or null while nobody has answered, and when closed
 * @param rung of the ladder, from 0
 * @param due when the running clock ends, or null when closed
 * @param since when it came to stand so, wall clock
 */
public record Standing(
    EpisodeState state, @Nullable Owner owner, int rung, @Nullable Instant due, Instant since) {

  public Standing {
    Objects.requireNonNull(state, "state");
    Objects.requireNonNull(since, "since");
    if ((state == EpisodeState.CLOSED) != (due == null)) {
      throw new IllegalArgumentException(state.word() + " with due " + due);
    }
    boolean answered = state != EpisodeState.OPEN && state != EpisodeState.CLOSED;
    if (answered && owner == null) {
      throw new IllegalArgumentException(state.word() + " without an owner");
    }
    if (rung < 0) {
      throw new IllegalArgumentException("rung " + rung);
    }
  }

  static Standing open(@Nullable Owner owner, int rung, Instant due, Instant since) {
    return new Standing(EpisodeState.OPEN, owner, rung, due, since);
  }

  Standing ownedBy(Owner other) {
    return new Standing(state, other, rung, due, since);
  }

  Standing dueBy(Instant other) {
    return new Standing(state, owner, rung, other, since);
  }

  /** Whether the clock has run out at {@code now}: at the very moment it has. */
  boolean dueAt(Instant now) {
    return due != null && !due.isAfter(now);
  }

  public @Nullable Awaiting awaiting() {
    return switch (state) {
      case OPEN -> Awaiting.ACKNOWLEDGEMENT;
      case ACKNOWLEDGED -> Awaiting.ATTENDANCE;
      case ATTENDED -> Awaiting.REASSESSMENT;
      case HELD -> Awaiting.HOLD_END;
      case CLOSED -> null;
    };
  }
}
