package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import org.driftward.dashboard.core.Card;

/**
 * The running episodes of several wards in one queue.
 *
 * @param waiting that nobody has answered, or whose owner let the clock run out; most urgent first
 * @param inHand the others, in the same order
 */
public record QueueScreen(Instant now, List<PatientLine> waiting, List<PatientLine> inHand) {

  public static QueueScreen of(List<Card> cards, Reader reader, Instant now, ZoneId zone) {
    var lines = cards.stream().map(card -> PatientLine.of(card, reader, now, zone)).toList();
    return new QueueScreen(
        now,
        lines.stream().filter(line -> line.needsSomebody(now)).toList(),
        lines.stream().filter(line -> !line.needsSomebody(now)).toList());
  }

  public String inWords() {
    return Wording.count(waiting.size(), "patient", "patients")
        + " waiting, "
        + inHand.size()
        + " in hand";
  }
}
