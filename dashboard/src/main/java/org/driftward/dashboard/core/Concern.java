package org.driftward.dashboard.core;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Comparator;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * Why a card stands where it does, gravest first.
 *
 * <p>The question is not whose score is highest but who needs somebody now. An episode that nobody
 * has answered comes before one that has an owner: delays of 15 minutes and more go with higher
 * mortality (Gupta 2017). Overdue with a high score comes next: observations are late most often
 * where the score is highest (Redfern 2019). The rest of the order is our own choice.
 */
public enum Concern implements Word {
  /** A high episode that nobody has answered, or whose clock ran out on its owner. */
  UNANSWERED_HIGH,
  /** The same of medium level. */
  UNANSWERED_MEDIUM,
  /** The next set is overdue, and the last one was bad or may have been. */
  OVERDUE_HIGH,
  /** A low episode that nobody has answered. */
  UNANSWERED_LOW,
  /** A high episode with an owner and a running clock. */
  ANSWERED_HIGH,
  /** A medium one. */
  ANSWERED_MEDIUM,
  /** Getting worse without an episode, or with a low one. */
  SLIDING,
  /** Nothing is known: no set yet, or the next one is overdue. */
  UNSEEN,
  /** A low episode with an owner. */
  ANSWERED_LOW,
  /** An episode that rests with a reason, a signature and an end. */
  HELD,
  /** Nothing of the above. */
  WATCHED;

  /**
   * Most concerning first: concern, then the worst total that is possible, then the larger rise,
   * then the longest waiting, then the bed as a person counts ({@code 2} before {@code 10}).
   */
  public static final Comparator<Card> ORDER =
      Comparator.comparing(Card::concern)
          .thenComparing(Concern::worst, Comparator.reverseOrder())
          .thenComparing(Concern::rise, Comparator.reverseOrder())
          .thenComparing(Concern::waitingSince)
          .thenComparing(Card::bed, Comparator.nullsLast(BedOrder.INSTANCE))
          .thenComparing(Card::encounter);

  /**
   * @param score or null without one
   * @param episode the running one, or null
   * @param overdue whether the next set is overdue at {@code now}
   * @param highScore from this possible total on a score is high: the policy of the ward
   */
  static Concern of(
      @Nullable ScoreLine score,
      Movement movement,
      @Nullable Episode episode,
      boolean overdue,
      BigDecimal highScore,
      Instant now) {
    var level = episode == null ? null : episode.level();
    boolean waits = episode != null && waits(episode, now);
    if (waits && level == Level.HIGH) {
      return UNANSWERED_HIGH;
    }
    if (waits && level == Level.MEDIUM) {
      return UNANSWERED_MEDIUM;
    }
    if (overdue && score != null && score.high().compareTo(highScore) >= 0) {
      return OVERDUE_HIGH;
    }
    if (waits) {
      return UNANSWERED_LOW;
    }
    boolean held = episode != null && episode.state() == EpisodeState.HELD;
    if (level != null && level != Level.LOW && !held) {
      return level == Level.HIGH ? ANSWERED_HIGH : ANSWERED_MEDIUM;
    }
    if (movement.slides()) {
      return SLIDING;
    }
    if (overdue || score == null) {
      return UNSEEN;
    }
    if (held) {
      return HELD;
    }
    return level == null ? WATCHED : ANSWERED_LOW;
  }

  private static boolean waits(Episode episode, Instant now) {
    return episode.state() == EpisodeState.OPEN
        || (episode.due() != null && now.isAfter(episode.due()));
  }

  private static BigDecimal worst(Card card) {
    return card.score() == null ? BigDecimal.ZERO : card.score().high();
  }

  private static BigDecimal rise(Card card) {
    var delta = card.movement().delta();
    return delta == null ? BigDecimal.ZERO : delta;
  }

  private static Instant waitingSince(Card card) {
    return card.episode() == null ? Instant.MAX : card.episode().openedAt();
  }
}
