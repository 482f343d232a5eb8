package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.Delivery;
import org.driftward.dashboard.core.Card;

/**
 * The running episodes of several wards in one queue.
 *
 * @param waiting that nobody has answered, or whose owner let the clock run out; most urgent first
 * @param inHand the others, in the same order
 */
public record QueueScreen(Instant now, List<PatientLine> waiting, List<PatientLine> inHand) {

  /**
   * @param told by episode: how the newest alarm reached whom
   */
  public static QueueScreen of(
      List<Card> cards, Map<String, List<Delivery>> told, Reader reader, Instant now, ZoneId zone) {
    var lines =
        cards.stream()
            .map(card -> PatientLine.of(card, told(card, told), reader, now, zone))
            .toList();
    return new QueueScreen(
        now,
        lines.stream().filter(line -> line.needsSomebody(now)).toList(),
        lines.stream().filter(line -> !line.needsSomebody(now)).toList());
  }

  private static List<Delivery> told(Card card, Map<String, List<Delivery>> told) {
    return card.episode() == null ? List.of() : told.getOrDefault(card.episode().id(), List.of());
  }

  public String inWords() {
    return Wording.count(waiting.size(), "patient", "patients")
        + " waiting, "
        + inHand.size()
        + " in hand";
  }
}
