package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.Delivery;
import org.driftward.dashboard.core.PatientView;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Populations;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.Trend;
import org.jspecify.annotations.Nullable;

/**
 * One patient in full.
 *
 * @param plan what has been signed for the patient; empty under the standard settings
 * @param reviews what has to be looked at again
 * @param line the same patient as the board shows them
 * @param scores the leading one first; empty before the first set
 * @param asOf how old the picture is, or null before the first
 * @param interval why the next set is due when it is, or empty
 * @param drift furthest first
 * @param trend significant first
 * @param changed by body function
 * @param episode the running one, or null
 * @param cares whether the person looks after patients
 * @param panel what may be set in a care plan
 */
public record PatientScreen(
    Identity who,
    List<String> plan,
    List<String> reviews,
    PatientLine line,
    List<ScoreTable> scores,
    @Nullable Countdown asOf,
    String interval,
    List<DriftRow> drift,
    List<TrendRow> trend,
    List<ChangeGroup> changed,
    @Nullable EpisodePanel episode,
    boolean cares,
    PlanPanel panel) {

  /**
   * @param told how the alarms of the running episode reached whom
   */
  public static PatientScreen of(
      PatientView view,
      List<Delivery> told,
      Findings findings,
      Populations populations,
      Reader reader,
      ZoneId zone) {
    Instant now = view.asOf();
    Snapshot snapshot = view.snapshot();
    var episode = view.episode();
    return new PatientScreen(
        Identity.of(view.encounter(), now, zone),
        PlanNotes.of(view.carePlan(), findings, now, zone),
        PlanNotes.reviews(view.carePlan(), now, zone),
        PatientLine.of(view.card(), reader, now, zone),
        snapshot == null
            ? List.of()
            : snapshot.scores().stream().map(score -> ScoreTable.of(score, findings)).toList(),
        snapshot == null ? null : Countdown.since(snapshot.asOf(), "newest values from"),
        interval(snapshot),
        snapshot == null ? List.of() : drift(snapshot.drift(), findings, now, zone),
        snapshot == null ? List.of() : trend(snapshot, findings, now),
        snapshot == null ? List.of() : ChangeGroup.of(snapshot.changed(), findings),
        episode == null ? null : EpisodePanel.of(episode, view.story(), told, reader, now, zone),
        reader.cares(),
        PlanPanel.of(view, findings, populations, reader, zone));
  }

  private static String interval(@Nullable Snapshot snapshot) {
    if (snapshot == null || snapshot.interval() == null) {
      return "";
    }
    String every = "a set every " + Wording.span(snapshot.interval());
    return snapshot.intervalReason() == null ? every : every + ": " + snapshot.intervalReason();
  }

  private static List<DriftRow> drift(
      List<Drift> drift, Findings findings, Instant now, ZoneId zone) {
    return drift.stream()
        .sorted(
            Comparator.comparing(Drift::worse, Comparator.reverseOrder())
                .thenComparing(one -> -Math.abs(one.drift())))
        .map(one -> DriftRow.of(one, findings, now, zone))
        .toList();
  }

  private static List<TrendRow> trend(Snapshot snapshot, Findings findings, Instant now) {
    Map<String, String> titles =
        snapshot.scores().stream().collect(Collectors.toMap(Score::id, Score::title));
    return snapshot.trend().stream()
        .sorted(
            Comparator.comparing(Trend::significant, Comparator.reverseOrder())
                .thenComparingDouble(Trend::pValue))
        .map(one -> TrendRow.of(one, titles, findings, now))
        .toList();
  }

  /** Says nothing about the person. */
  @Override
  public String toString() {
    return "PatientScreen[" + who.encounter() + "]";
  }
}
