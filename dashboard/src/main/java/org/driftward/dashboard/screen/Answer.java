package org.driftward.dashboard.screen;

import java.time.Instant;
import java.util.List;
import java.util.function.Predicate;

/**
 * One of the four questions a charge nurse brings to the board, answered with a count and the beds.
 *
 * @param css name of the style
 * @param question as a heading
 * @param patients most concerning first
 */
public record Answer(String css, String question, List<PatientLine> patients) {

  /** Who needs somebody now, who is sliding, who is overdue, what is in hand. */
  static List<Answer> fourOf(List<PatientLine> lines, Instant now) {
    return List.of(
        answer("now", "Need somebody now", lines, line -> line.needsSomebody(now)),
        answer("sliding", "Sliding", lines, PatientLine::sliding),
        answer("overdue", "Observations overdue", lines, line -> line.overdue(now)),
        answer("owned", "In hand", lines, line -> line.hand() != null && !line.needsSomebody(now)));
  }

  private static Answer answer(
      String css, String question, List<PatientLine> lines, Predicate<PatientLine> belongs) {
    return new Answer(css, question, lines.stream().filter(belongs).toList());
  }
}
