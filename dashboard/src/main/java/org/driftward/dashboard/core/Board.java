package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.List;
import java.util.Objects;

/**
 * A ward at one moment.
 *
 * @param asOf ward time of the reading; overdue is judged by it
 * @param cards most concerning first, see {@link Concern#ORDER}
 */
public record Board(String ward, Instant asOf, List<Card> cards, Counts counts) {

  /**
   * @param patients on the ward
   * @param unanswered episodes that nobody has answered
   * @param running episodes that are not closed, the unanswered among them
   * @param overdue patients whose next set is overdue
   * @param incomplete patients without a settled score: no set yet, or inputs missing
   */
  public record Counts(int patients, int unanswered, int running, int overdue, int incomplete) {
    static Counts of(List<Card> cards) {
      int unanswered = 0;
      int running = 0;
      int overdue = 0;
      int incomplete = 0;
      for (Card card : cards) {
        unanswered += card.unanswered() ? 1 : 0;
        running += card.episode() != null ? 1 : 0;
        overdue += card.overdue() ? 1 : 0;
        incomplete += card.score() == null || !card.score().complete() ? 1 : 0;
      }
      return new Counts(cards.size(), unanswered, running, overdue, incomplete);
    }
  }

  public Board {
    Objects.requireNonNull(ward, "ward");
    Objects.requireNonNull(asOf, "asOf");
    cards = List.copyOf(cards);
  }

  /** Puts the cards in order and counts them. */
  public static Board of(String ward, Instant asOf, List<Card> cards) {
    var ordered = cards.stream().sorted(Concern.ORDER).toList();
    return new Board(ward, asOf, ordered, Counts.of(ordered));
  }

  /** Whether a person would see any difference, {@code asOf} aside. */
  public boolean shows(Board other) {
    return ward.equals(other.ward) && cards.equals(other.cards);
  }
}
