package org.driftward.dashboard.screen;

import java.time.Instant;
import java.util.List;

/**
 * A ward's board.
 *
 * @param now ward time of what it shows
 * @param answers the four questions, answered
 * @param concerned patients with a running episode, most concerning first
 * @param others the rest, most concerning first
 */
public record BoardScreen(
    String ward,
    Instant now,
    List<Answer> answers,
    List<PatientLine> concerned,
    List<PatientLine> others) {

  /**
   * @param lines every patient of the ward, most concerning first
   */
  public static BoardScreen of(String ward, Instant now, List<PatientLine> lines) {
    return new BoardScreen(
        ward,
        now,
        Answer.fourOf(lines, now),
        lines.stream().filter(PatientLine::concerning).toList(),
        lines.stream().filter(line -> !line.concerning()).toList());
  }
}
