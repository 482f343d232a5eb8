package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * Where people act on episodes. Every answer is durable when it returns: the change, its journal
 * entry and the next deadline are in one database transaction. Thread-safe, blocking.
 */
public interface EpisodeDesk {

  /** What a person may do to an episode. */
  enum Action implements Word {
    ACKNOWLEDGE,
    ATTEND,
    HAND_OVER,
    HOLD,
    ESCALATE,
    CLOSE
  }

  /**
   * @param seenVersion the version the person was looking at, or null to act on whatever is current
   * @param note or null
   * @param reason required to hold and to close
   * @param to account to hand over to; only for {@link Action#HAND_OVER}
   * @param until end of the hold; only for {@link Action#HOLD}
   * @param toName how people know whoever takes over, or null for the name on the shift
   */
  record Request(
      String episode,
      Action action,
      @Nullable Long seenVersion,
      @Nullable String note,
      @Nullable String reason,
      @Nullable String to,
      @Nullable Instant until,
      @Nullable String toName) {

    public Request(
        String episode,
        Action action,
        @Nullable Long seenVersion,
        @Nullable String note,
        @Nullable String reason,
        @Nullable String to,
        @Nullable Instant until) {
      this(episode, action, seenVersion, note, reason, to, until, null);
    }

    /** The same, naming whoever takes over. */
    public Request naming(@Nullable String name) {
      return new Request(episode, action, seenVersion, note, reason, to, until, name);
    }
  }

  /** What became of it. */
  sealed interface Answer {
    record Done(Episode episode) implements Answer {}

    /** The action does not apply to the current state; somebody may have been faster. */
    record NoLongerApplies(Episode current, String why) implements Answer {}

    /** A field of the request is missing or makes no sense. */
    record Incomplete(String field, String why) implements Answer {}

    record Unknown() implements Answer {}

    /** The person's roles do not allow the action. */
    record NotAllowed(String why) implements Answer {}
  }

  Answer act(Request request, Actor actor);

  Optional<Episode> find(String episode);

  /** The episode of an encounter that is not over. */
  Optional<Episode> running(String encounter);

  /**
   * Most urgent first: by level, then unanswered before answered, then the longest waiting.
   *
   * @param wards only these, or null for all
   * @param states only these; empty for every state but closed
   * @param level only this, or null for all
   */
  List<Episode> list(@Nullable Set<String> wards, Set<EpisodeState> states, @Nullable Level level);

  /** Every change of one episode, oldest first. */
  List<EpisodeChange> story(String episode);
}
