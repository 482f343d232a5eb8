package org.driftward.dashboard.screen;

import java.time.Instant;
import java.util.List;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;

/**
 * A score that explains itself: for each point the value, its age, the band, and the published row
 * it comes from.
 *
 * @param risk the risk class in words; both ends where the set is incomplete
 * @param rise over the patient's own usual level
 * @param missing names of the inputs to measure
 * @param rows in the order of the published table
 */
public record ScoreTable(
    String id,
    ScoreMark mark,
    String version,
    String risk,
    String rise,
    DriftLine line,
    List<String> missing,
    List<Row> rows) {

  /**
   * @param age since when the value is known
   * @param note how it was derived, or empty
   */
  public record Row(
      String name,
      String value,
      Countdown age,
      int points,
      String band,
      String row,
      String source,
      String note) {

    static Row of(ScoredInput input, Findings findings) {
      return new Row(
          findings.name(input.code()),
          Wording.value(input.value(), input.unit()),
          age(input.takenAt()),
          input.points(),
          input.band(),
          input.row(),
          input.source(),
          input.derivedFrom() == null ? "" : input.derivedFrom());
    }

    private static Countdown age(Instant takenAt) {
      return Countdown.since(takenAt, "");
    }
  }

  /** Where every row comes from, or empty where not all come from the same. */
  public String source() {
    var sources = rows.stream().map(Row::source).distinct().toList();
    return sources.size() == 1 ? sources.get(0) : "";
  }

  public static ScoreTable of(Score score, Findings findings) {
    return new ScoreTable(
        score.id(),
        ScoreMark.of(score.title(), score.low(), score.high(), score.complete()),
        score.version(),
        risk(score),
        rise(score),
        DriftLine.of(score.low(), score.high(), score.usual()),
        score.missing().stream().map(findings::name).toList(),
        score.inputs().stream().map(input -> Row.of(input, findings)).toList());
  }

  private static String risk(Score score) {
    return score.risk().equals(score.riskIfWorst())
        ? score.risk()
        : score.risk() + ", perhaps " + score.riskIfWorst();
  }

  private static String rise(Score score) {
    var usual = score.usual();
    var rise = score.rise();
    if (usual == null || rise == null) {
      return "usual level not known yet";
    }
    return rise.signum() == 0
        ? "at the patient's usual " + Wording.number(usual)
        : Wording.signed(rise.doubleValue(), 1)
            + " on the patient's usual "
            + Wording.number(usual);
  }
}
