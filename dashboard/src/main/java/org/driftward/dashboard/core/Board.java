package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * A ward at one moment.
 *
 * @param asOf ward time of the reading; overdue is judged by it
 * @param cards most concerning first, see {@link Concern#ORDER}
 * @param unreadable patients of whom nothing can be shown, though they are here
 */
public record Board(
    String ward, Instant asOf, List<Card> cards, List<Unreadable> unreadable, Counts counts) {

  /** A patient whose record cannot be read. A board must not look as if the bed were empty. */
  public record Unreadable(String encounter, String ward, @Nullable String bed) {}

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
    unreadable = List.copyOf(unreadable);
  }

  /** Puts the cards in order and counts them. */
  public static Board of(String ward, Instant asOf, List<Card> cards, List<Unreadable> unreadable) {
    var ordered = cards.stream().sorted(Concern.ORDER).toList();
    return new Board(ward, asOf, ordered, unreadable, Counts.of(ordered));
  }

  /** Of a ward of which everything can be read. */
  public static Board of(String ward, Instant asOf, List<Card> cards) {
    return of(ward, asOf, cards, List.of());
  }

  /** Whether a person would see any difference, {@code asOf} aside. */
  public boolean shows(Board other) {
    return ward.equals(other.ward)
        && cards.equals(other.cards)
        && unreadable.equals(other.unreadable);
  }
}
