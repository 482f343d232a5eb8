package org.driftward.alerts.core.audit;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.contract.CareHistory.ObservedSet;
import org.jspecify.annotations.Nullable;

/** Whether observations were taken when they were due, and whole. */
final class ObservationMeasures {

  /** Shares of the interval: Redfern 2019. */
  private static final double LATE = 0.33;

  private static final double MISSED = 0.67;

  /** The bands of NEWS2's thresholds (RCP 2017, chart 2), as people speak of them. */
  private enum Band {
    LOW("score 0 to 4", 0, 4),
    MIDDLE("score 5 to 6", 5, 6),
    HIGH("score 7 or more", 7, Integer.MAX_VALUE);

    private final String words;
    private final BigDecimal from;
    private final BigDecimal upto;

    Band(String words, int from, int upto) {
      this.words = words;
      this.from = BigDecimal.valueOf(from);
      this.upto = BigDecimal.valueOf(upto);
    }

    boolean holds(@Nullable BigDecimal score) {
      return score != null && score.compareTo(from) >= 0 && score.compareTo(upto) <= 0;
    }
  }

  /**
   * A set that was due.
   *
   * @param by the set before, which says when
   * @param late share of the interval by which the next came late; 0 or less in time
   */
  private record Due(ObservedSet by, double late) {
    String trace() {
      return View.trace(by);
    }
  }

  private ObservationMeasures() {}

  static List<Measure> of(View view) {
    return List.of(punctuality(view), completeness(view));
  }

  private static Measure punctuality(View view) {
    var due = due(view);
    var figures = new ArrayList<Figure>();
    figures.add(Figures.share("Taken by the time it was due", due, d -> d.late() <= 0, Due::trace));
    figures.add(
        Figures.share(
            "Overdue by 33 % of the interval or more", due, d -> d.late() >= LATE, Due::trace));
    figures.add(
        Figures.share(
            "Overdue by 67 % of the interval or more", due, d -> d.late() >= MISSED, Due::trace));
    for (var band : Band.values()) {
      var inBand = due.stream().filter(d -> band.holds(d.by().low())).toList();
      figures.add(
          Figures.share("33 % or more, " + band.words, inBand, d -> d.late() >= LATE, Due::trace));
      figures.add(
          Figures.share(
              "67 % or more, " + band.words, inBand, d -> d.late() >= MISSED, Due::trace));
    }
    return new Measure(
        "M14",
        "Late and missed observations",
        "Sets overdue by a share of the interval / sets due, by the score that set the interval.",
        "Redfern 2019",
        figures,
        null);
  }

  private static List<Due> due(View view) {
    var due = new ArrayList<Due>();
    for (var set : view.evidence().sets()) {
      @Nullable Due one = due(view, set);
      if (one != null) {
        due.add(one);
      }
    }
    return due;
  }

  /** Null where the set that was due is not asked about, or the patient had left by then. */
  private static @Nullable Due due(View view, ObservedSet set) {
    var at = set.due();
    var interval = set.interval();
    if (at == null || interval == null || !view.window().holds(at)) {
      return null;
    }
    var left = view.leftAt(set.encounter());
    boolean asked =
        view.window().holdsScore(set.low())
            && view.wardAt(set.encounter(), set.at()).filter(view.window()::sees).isPresent();
    if (!asked || (left != null && !at.isBefore(left)) || at.isAfter(view.evidence().until())) {
      return null;
    }
    var next = view.setsOf(set.encounter()).higherKey(set.at());
    var end = left == null ? view.evidence().until() : left;
    Instant came = next == null ? end : next;
    return new Due(set, (double) Duration.between(at, came).toMillis() / interval.toMillis());
  }

  private static Measure completeness(View view) {
    var sets = view.sets();
    return new Measure(
        "M15",
        "Complete sets",
        "Sets with every core observation / all sets; also those whose score was complete.",
        "NICE CG50: heart rate, respiratory rate, systolic pressure, consciousness, oxygen"
            + " saturation, temperature; the policy's list counts here",
        List.of(
            Figures.share("All core observations", sets, ObservedSet::core, View::trace),
            Figures.share("Score complete", sets, ObservedSet::scored, View::trace)),
        null);
  }
}
