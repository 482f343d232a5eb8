package org.driftward.dashboard.screen;

import java.time.Instant;
import java.util.Objects;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeState;
import org.jspecify.annotations.Nullable;

/**
 * In whose hands an episode is, and which clocks run on it.
 *
 * @param owner as people know them, or null while nobody is responsible
 * @param state where it stands, in words
 * @param waiting how long the alarm has waited for an answer, or null once somebody has answered
 * @param clock what must happen next, and by when; null when the episode is over
 */
public record Hand(
    @Nullable String owner, String state, @Nullable Countdown waiting, @Nullable Countdown clock) {

  public static Hand of(Episode episode) {
    String owner = episode.ownerName() == null ? episode.owner() : episode.ownerName();
    return new Hand(
        owner,
        state(episode),
        episode.state() == EpisodeState.OPEN ? waiting(episode) : null,
        clock(episode));
  }

  /** Once answered and alarmed again, the first trigger no longer says how long nobody answered. */
  private static Countdown waiting(Episode episode) {
    return episode.acknowledgedAt() == null && episode.attendedAt() == null
        ? Countdown.since(episode.openedAt(), "unanswered for")
        : Countdown.since(episode.openedAt(), "alarmed again, concern open for");
  }

  private static String state(Episode episode) {
    return switch (episode.state()) {
      case OPEN -> "Not answered";
      case ACKNOWLEDGED -> "Acknowledged";
      case ATTENDED -> "At the bedside";
      case HELD -> "On hold";
      case CLOSED -> "Closed";
    };
  }

  private static @Nullable Countdown clock(Episode episode) {
    if (episode.awaiting() == null) {
      return null;
    }
    Instant due = Objects.requireNonNull(episode.due(), "due");
    return switch (episode.awaiting()) {
      case ACKNOWLEDGEMENT -> Countdown.due(due, "next call in", "answer overdue by");
      case ATTENDANCE -> Countdown.due(due, "bedside visit due in", "bedside visit overdue by");
      case REASSESSMENT -> Countdown.due(due, "reassessment due in", "reassessment overdue by");
      case HOLD_END -> Countdown.due(due, "hold ends in", "hold ended for");
    };
  }
}
