package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.IntStream;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.core.WardPaper;

/**
 * A ward on paper for when the system is down (practice.md, section 7): who lies where, the last
 * sets with their times, what is due, limits, ceiling, open concern, and blank rows to go on with.
 *
 * @param asOf with the day
 * @param columns of every patient's table
 * @param blanks as many empty rows as each patient gets
 */
public record DowntimeScreen(
    String ward, String asOf, List<String> columns, List<Patient> patients, List<Integer> blanks) {

  private static final int LAST_SETS = 3;
  private static final int BLANK_ROWS = 3;

  /**
   * @param notes care plan, or the standard settings
   * @param concern the open concern, or that there is none
   */
  public record Patient(
      Identity who,
      String score,
      String due,
      List<String> notes,
      String concern,
      List<HistoryTable.Row> sets) {}

  public static DowntimeScreen of(WardPaper paper, Findings findings, ZoneId zone) {
    var now = paper.board().asOf();
    var patients = new ArrayList<Patient>();
    List<String> columns = List.of();
    for (int i = 0; i < paper.patients().size(); i++) {
      var history = recent(paper.histories().get(i));
      var table = HistoryTable.of(history, findings, now, zone);
      columns = table.columns();
      patients.add(patient(paper.patients().get(i), table, findings, now, zone));
    }
    var there = now.atZone(zone);
    return new DowntimeScreen(
        paper.board().ward(),
        Wording.date(there.toLocalDate()) + " " + Wording.time(now, now, zone),
        columns,
        patients,
        IntStream.rangeClosed(1, BLANK_ROWS).boxed().toList());
  }

  /** Retracted sets help nobody on paper. */
  private static PatientHistory recent(PatientHistory history) {
    return new PatientHistory(
        history.encounter(),
        history.assessments().stream().filter(one -> !one.retracted()).limit(LAST_SETS).toList(),
        history.snapshots(),
        true);
  }

  private static Patient patient(
      PatientView view, HistoryTable table, Findings findings, Instant now, ZoneId zone) {
    var card = view.card();
    var mark = card.score() == null ? null : ScoreMark.of(card.score());
    var notes = PlanNotes.of(view.carePlan(), findings, now, zone);
    return new Patient(
        Identity.of(view.encounter(), now, zone),
        mark == null
            ? "no score"
            : mark.title() + " " + mark.total() + (mark.note().isEmpty() ? "" : ", " + mark.note()),
        card.nextDue() == null
            ? "no set planned"
            : "next set " + Wording.time(card.nextDue(), now, zone),
        notes.isEmpty() ? List.of("Standard settings.") : notes,
        concern(view, now, zone),
        table.rows());
  }

  private static String concern(PatientView view, Instant now, ZoneId zone) {
    var episode = view.card().episode();
    if (episode == null) {
      return "No open concern.";
    }
    var hand = Hand.of(episode);
    return "%s priority since %s, %s: %s"
        .formatted(
            Sign.of(episode.level()).word(),
            Wording.time(episode.openedAt(), now, zone),
            hand.owner() == null ? "nobody has it" : "in the hands of " + hand.owner(),
            Reasons.brief(view.card().reasons()));
  }
}
