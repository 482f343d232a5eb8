package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.List;
import java.util.function.Predicate;
import org.driftward.dashboard.core.Board;

/**
 * A ward's board.
 *
 * @param now ward time of what it shows
 * @param answers the four questions, answered
 * @param concerned patients that ask for attention, most concerning first, a line each
 * @param quiet the rest, in the same order
 */
public record BoardScreen(
    String ward,
    Instant now,
    List<Answer> answers,
    List<PatientLine> concerned,
    List<PatientLine> quiet) {

  public static BoardScreen of(Board board, Reader reader, ZoneId zone) {
    var lines =
        board.cards().stream()
            .map(card -> PatientLine.of(card, reader, board.asOf(), zone))
            .toList();
    return new BoardScreen(
        board.ward(),
        board.asOf(),
        Answer.fourOf(lines, board.asOf()),
        lines.stream().filter(Predicate.not(PatientLine::quiet)).toList(),
        lines.stream().filter(PatientLine::quiet).toList());
  }

  public String inWords() {
    int all = concerned.size() + quiet.size();
    return all == 0
        ? "No patient lies here"
        : concerned.size()
            + " of "
            + Wording.count(all, "patient", "patients")
            + " ask for attention";
  }
}
