package org.driftward.dashboard.screen;

import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingValue.Quantity;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;

/**
 * What was recorded, newest first: the vital signs in columns, all else in a list. A retracted
 * assessment stays, struck through.
 *
 * @param columns headings of the vital signs, with their unit
 * @param complete whether nothing was left off for length
 * @param editable whether the reader may add to the record and correct it
 */
public record HistoryTable(
    List<String> columns, List<Row> rows, boolean complete, boolean editable) {

  /** Recorded this much after it was taken, an entry shows both times. */
  private static final Duration LATE = Duration.ofMinutes(15);

  /** The vital signs in the order of the published NEWS2 chart, then the diastolic pressure. */
  private static final List<String> CODES =
      List.of(
          "respiratory-rate",
          "oxygen-saturation",
          "inspired-oxygen",
          "oxygen-flow",
          "systolic-pressure",
          "diastolic-pressure",
          "heart-rate",
          "consciousness",
          "temperature");

  /**
   * @param id of the assessment
   * @param cells one for each column; empty where not recorded
   * @param others findings outside the columns, each in words with its value
   * @param note amended or retracted with the reason, recorded late; or empty
   */
  public record Row(
      String id,
      Instant at,
      String time,
      String score,
      List<String> cells,
      List<String> others,
      String by,
      boolean retracted,
      String note) {}

  /** For somebody who only reads. */
  public static HistoryTable of(
      PatientHistory history, Findings findings, Instant now, ZoneId zone) {
    return of(history, findings, now, zone, false);
  }

  public static HistoryTable of(
      PatientHistory history, Findings findings, Instant now, ZoneId zone, boolean editable) {
    var totals = new HashMap<String, String>();
    for (Snapshot snapshot : history.snapshots()) {
      Score score = snapshot.leading();
      if (score != null) {
        totals.putIfAbsent(
            snapshot.assessment(),
            ScoreMark.of(score.title(), score.low(), score.high(), score.complete()).total());
      }
    }
    return new HistoryTable(
        CODES.stream().map(code -> heading(code, findings)).toList(),
        history.assessments().stream().map(one -> row(one, totals, findings, now, zone)).toList(),
        history.complete(),
        editable);
  }

  private static String heading(String code, Findings findings) {
    String unit = Wording.unit(findings.unit(code));
    return unit.isEmpty() ? findings.name(code) : findings.name(code) + ", " + unit;
  }

  private static Row row(
      Assessment one, Map<String, String> totals, Findings findings, Instant now, ZoneId zone) {
    var cells = new HashMap<String, String>();
    var others = new ArrayList<String>();
    for (Finding finding : one.findings()) {
      if (CODES.contains(finding.code())) {
        cells.put(finding.code(), Wording.value(Scalar.of(finding.value()), null));
      } else {
        others.add(inWords(finding, findings));
      }
    }
    return new Row(
        one.id(),
        one.takenAt(),
        Wording.time(one.takenAt(), now, zone),
        totals.getOrDefault(one.id(), ""),
        CODES.stream().map(code -> cells.getOrDefault(code, "")).toList(),
        others,
        one.by() + ", " + one.source().word(),
        one.retracted(),
        note(one, now, zone));
  }

  private static String inWords(Finding finding, Findings findings) {
    var key = finding.key();
    String unit = finding.value() instanceof Quantity quantity ? quantity.unit() : null;
    return findings.name(key.code(), key.site(), key.side())
        + " "
        + Wording.value(Scalar.of(finding.value()), unit);
  }

  private static String note(Assessment one, Instant now, ZoneId zone) {
    var notes = new ArrayList<String>();
    if (one.status() != Assessment.Status.FINAL) {
      String status = Wording.sentence(one.status().word());
      notes.add(one.reason() == null ? status : status + ": " + one.reason());
    }
    if (one.recordedAt().isAfter(one.takenAt().plus(LATE))) {
      notes.add("recorded " + Wording.time(one.recordedAt(), now, zone));
    }
    return String.join("; ", notes);
  }
}
