package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoreTables.Cell;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * What the charts draw: the score, and each vital sign on a row of its own. Rows laid over each
 * other read worse (practice.md, section 8).
 *
 * @param from first moment of the window, seconds since 1970
 * @param to last moment
 * @param offset seconds that the hospital's clock is ahead of UTC
 */
public record ChartData(long from, long to, int offset, @Nullable ScoreRow score, List<Row> rows) {

  /** The vital signs that are drawn, in the order of the published NEWS2 chart. */
  private static final List<String> CODES =
      List.of(
          "respiratory-rate",
          "oxygen-saturation",
          "systolic-pressure",
          "diastolic-pressure",
          "heart-rate",
          "temperature");

  /**
   * @param points lower and upper bound over time, oldest first
   */
  public record ScoreRow(String title, List<Total> points) {}

  /**
   * @param t seconds since 1970
   */
  public record Total(long t, double low, double high) {}

  /**
   * @param usual the patient's own baseline now, or null
   * @param spread of the baseline, or null
   * @param bands of the leading score's table, lowest first; empty where it has none
   */
  public record Row(
      String code,
      String name,
      String unit,
      @Nullable Double usual,
      @Nullable Double spread,
      List<Band> bands,
      List<Point> points) {}

  /**
   * A cell of the published table as it is drawn: widened by half a step of its last digit, so that
   * neighbours touch.
   *
   * @param from lower edge, or null if open
   * @param upto upper edge, or null if open
   */
  public record Band(@Nullable Double from, @Nullable Double upto, int points) {
    private static final BigDecimal HALF = new BigDecimal("0.5");

    static Band of(Cell cell) {
      return new Band(edge(cell.from(), HALF.negate()), edge(cell.upto(), HALF), cell.points());
    }

    private static @Nullable Double edge(@Nullable BigDecimal value, BigDecimal steps) {
      return value == null ? null : value.add(value.ulp().multiply(steps)).doubleValue();
    }
  }

  /**
   * @param t seconds since 1970
   * @param points that the value earned in the leading score, or null where it was not scored
   */
  public record Point(long t, double value, @Nullable Integer points) {}

  /**
   * @param cells of the table that scores this patient, by input
   */
  public static ChartData of(
      PatientHistory history,
      Findings findings,
      Function<String, List<Cell>> cells,
      Instant from,
      Instant to,
      int offset) {
    var byAssessment = new HashMap<String, Snapshot>();
    history.snapshots().forEach(one -> byAssessment.putIfAbsent(one.assessment(), one));
    return new ChartData(
        from.getEpochSecond(),
        to.getEpochSecond(),
        offset,
        score(history.snapshots()),
        rows(history, byAssessment, findings, cells));
  }

  private static @Nullable ScoreRow score(List<Snapshot> snapshots) {
    var totals = new ArrayList<Total>();
    String title = null;
    for (int i = snapshots.size() - 1; i >= 0; i--) {
      Score score = snapshots.get(i).leading();
      if (score != null) {
        title = score.title();
        long t = snapshots.get(i).asOf().getEpochSecond();
        totals.add(new Total(t, score.low().doubleValue(), score.high().doubleValue()));
      }
    }
    return title == null ? null : new ScoreRow(title, totals);
  }

  private static List<Row> rows(
      PatientHistory history,
      Map<String, Snapshot> byAssessment,
      Findings findings,
      Function<String, List<Cell>> cells) {
    var rows = new ArrayList<Row>();
    for (String code : CODES) {
      var points = points(code, history.assessments(), byAssessment);
      if (!points.isEmpty()) {
        Drift drift = drift(code, history.snapshots());
        rows.add(
            new Row(
                code,
                findings.name(code),
                Wording.unit(findings.unit(code)),
                drift == null ? null : drift.baseline(),
                drift == null ? null : drift.spread(),
                cells.apply(code).stream().map(Band::of).toList(),
                points));
      }
    }
    return rows;
  }

  /** Oldest first, without what was retracted. */
  private static List<Point> points(
      String code, List<Assessment> newestFirst, Map<String, Snapshot> byAssessment) {
    var points = new ArrayList<Point>();
    for (int i = newestFirst.size() - 1; i >= 0; i--) {
      Assessment one = newestFirst.get(i);
      for (Finding finding : one.retracted() ? List.<Finding>of() : one.findings()) {
        if (finding.code().equals(code) && finding.value() instanceof Quantity quantity) {
          points.add(
              new Point(
                  one.takenAt().getEpochSecond(),
                  quantity.value().doubleValue(),
                  earned(code, one, byAssessment.get(one.id()))));
        }
      }
    }
    return points;
  }

  private static @Nullable Integer earned(
      String code, Assessment one, @Nullable Snapshot snapshot) {
    Score score = snapshot == null ? null : snapshot.leading();
    if (score == null) {
      return null;
    }
    for (ScoredInput input : score.inputs()) {
      if (input.code().equals(code) && input.takenAt().equals(one.takenAt())) {
        return input.points();
      }
    }
    return null;
  }

  /** The newest baseline of the code. */
  private static @Nullable Drift drift(String code, List<Snapshot> newestFirst) {
    for (Snapshot snapshot : newestFirst) {
      for (Drift drift : snapshot.drift()) {
        if (drift.code().equals(code)) {
          return drift;
        }
      }
    }
    return null;
  }
}
