package org.driftward.dashboard.screen;

import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import org.driftward.alerts.contract.Episode;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.Card;
import org.jspecify.annotations.Nullable;

/**
 * What a person who cannot watch the board is told when it changes: new and risen concerns, and who
 * took them. Scores that move without an episode are left to the eye; a voice that never rests is
 * not listened to.
 */
public final class News {

  private News() {}

  /** In words, or empty where nothing is worth a word. */
  public static Optional<String> between(Board before, Board after) {
    Map<String, Card> earlier = new HashMap<>();
    before.cards().forEach(card -> earlier.put(card.encounter(), card));
    List<String> news =
        after.cards().stream()
            .map(card -> of(earlier.get(card.encounter()), card))
            .flatMap(Optional::stream)
            .toList();
    return news.isEmpty() ? Optional.empty() : Optional.of(String.join(" ", news));
  }

  private static Optional<String> of(@Nullable Card before, Card after) {
    Episode was = before == null ? null : before.episode();
    Episode is = after.episode();
    if (is == null) {
      return was == null ? Optional.empty() : Optional.of(who(after) + ": concern closed.");
    }
    if (was == null || !was.id().equals(is.id()) || is.level().compareTo(was.level()) > 0) {
      String first = is.reasons().isEmpty() ? "" : ", " + is.reasons().get(0).words();
      return Optional.of("%s: %s priority%s.".formatted(who(after), is.level().word(), first));
    }
    if (is.state() != was.state() || !Objects.equals(is.owner(), was.owner())) {
      Hand hand = Hand.of(is);
      String owner = hand.owner() == null ? "" : ", " + hand.owner();
      return Optional.of(
          "%s: %s%s.".formatted(who(after), hand.state().toLowerCase(Locale.ROOT), owner));
    }
    return Optional.empty();
  }

  private static String who(Card card) {
    return "Bed "
        + (card.bed() == null ? "unknown" : card.bed())
        + ", "
        + PersonName.of(card.name()).surname();
  }
}
