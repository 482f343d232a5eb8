package org.driftward.dashboard.screen;

import static org.driftward.dashboard.screen.Sample.NOW;
import static org.driftward.dashboard.screen.Sample.ago;
import static org.driftward.dashboard.screen.Sample.in;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.core.Total;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.Patient.Sex;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.Trend;
import org.jspecify.annotations.Nullable;

/** One patient of the invented ward in full: a chest infection after an operation. */
final class SamplePatient {

  private static final String TABLE = "RCP NEWS2 2017, chart 1";

  private SamplePatient() {}

  static PatientView view() {
    var encounter = Sample.encounter("V-104", "4", "Marlow, Edith Rose", 74, Sex.FEMALE);
    Snapshot snapshot = snapshot();
    Episode episode =
        Sample.open(
            "V-104",
            org.driftward.ingest.contract.Level.HIGH,
            4,
            "NEWS2 is 8: at or above 7",
            "Rose by 6 over the usual 2 within 24 h",
            "Respiratory rate is 4.2 spreads above the usual 16 /min");
    List<Total> totals = Sample.totals(2, 2, 1, 2, 3, 4, 4, -7);
    var plan = Sample.ceiling("V-104");
    return new PatientView(
        NOW,
        Sample.card(encounter, snapshot, plan, episode, totals),
        encounter,
        plan,
        snapshot,
        episode,
        List.of(
            new EpisodeChange(11, ago(4), "opened", "driftward", null, null, episode),
            new EpisodeChange(
                12, ago(1), "escalated", "driftward", null, "no answer in time", episode)));
  }

  private static Snapshot snapshot() {
    Score score =
        Sample.score(
            7,
            9,
            2,
            List.of("temperature"),
            List.of(
                input("respiratory-rate", Scalar.of(new BigDecimal("24")), "/min", 2, "21 to 24"),
                input("oxygen-saturation", Scalar.of(new BigDecimal("93")), "%", 2, "92 to 93"),
                input("inspired-oxygen", Scalar.of("air"), null, 0, "air"),
                input(
                    "systolic-pressure",
                    Scalar.of(new BigDecimal("108")),
                    "mm[Hg]",
                    1,
                    "101 to 110"),
                input("heart-rate", Scalar.of(new BigDecimal("118")), "/min", 2, "111 to 130"),
                input("consciousness", Scalar.of("alert"), null, 0, "alert")));
    Instant quiet = ago(2800);
    return new Snapshot(
        "V-104",
        ago(14),
        "A-23",
        31,
        true,
        false,
        "shipped-1",
        1,
        List.of(score),
        List.of(
            new Drift(
                "respiratory-rate",
                null,
                null,
                24,
                "/min",
                16,
                1.9,
                4.2,
                true,
                6.1,
                14,
                quiet,
                ago(900)),
            new Drift(
                "heart-rate", null, null, 118, "/min", 82, 9, 4, true, 5.2, 14, quiet, ago(900)),
            new Drift(
                "systolic-pressure",
                null,
                null,
                108,
                "mm[Hg]",
                131,
                9.4,
                -2.4,
                false,
                -3.5,
                14,
                quiet,
                ago(900))),
        List.of(
            new Trend(
                "respiratory-rate",
                null,
                null,
                0.85,
                0.004,
                31,
                12,
                ago(720),
                true,
                in(75),
                in(50),
                in(160),
                25d),
            new Trend(
                "news2", null, null, 0.42, 0.01, 29, 12, ago(720), true, null, null, null, null),
            new Trend(
                "temperature",
                null,
                null,
                0.02,
                0.41,
                5,
                11,
                ago(720),
                false,
                null,
                null,
                null,
                null)),
        List.of(
            new ChangedFinding(
                "orientation",
                null,
                null,
                Scalar.of("oriented"),
                Scalar.of("confused"),
                ago(95),
                Group.BRAIN,
                "Lost orientation"),
            new ChangedFinding(
                "pulse-amplitude",
                "dorsalis-pedis",
                Side.LEFT,
                Scalar.of(BigDecimal.valueOf(2)),
                Scalar.of(BigDecimal.ONE),
                ago(200),
                Group.LIMB_CIRCULATION,
                "Left dorsalis pedis pulse is weaker")),
        ago(14),
        List.of("temperature"),
        in(16),
        Duration.ofMinutes(30),
        "NEWS2 of 7 or more",
        null);
  }

  private static ScoredInput input(
      String code, Scalar value, @Nullable String unit, int points, String band) {
    return new ScoredInput(
        code, value, unit, ago(14), points, band, Sample.FINDINGS.name(code), TABLE, null);
  }

  /** A set every two hours; the newest lacks the temperature, one was retracted. */
  static PatientHistory history() {
    var assessments = new ArrayList<Assessment>();
    var snapshots = new ArrayList<Snapshot>();
    for (int i = 0; i < 24; i++) {
      double ill = Math.max(0, (12 - i) / 12.0);
      boolean retracted = i == 3;
      var findings = new ArrayList<Finding>();
      findings.add(number("respiratory-rate", 16 + 8 * ill + i % 2, "/min"));
      findings.add(number("oxygen-saturation", 96 - 3 * ill - i % 3 * 0.5, "%"));
      findings.add(Finding.coded("inspired-oxygen", "air"));
      findings.add(number("systolic-pressure", 131 - 23 * ill + i % 4 * 2, "mm[Hg]"));
      findings.add(number("diastolic-pressure", 76 - 12 * ill + i % 3, "mm[Hg]"));
      findings.add(number("heart-rate", 82 + 36 * ill + i % 3 * 3, "/min"));
      findings.add(Finding.coded("consciousness", "alert"));
      if (i > 0) {
        findings.add(
            Finding.quantity(
                "temperature", String.valueOf(Math.round((36.8 + 1.3 * ill) * 10) / 10.0), "Cel"));
      }
      findings.add(
          new Finding(
              new FindingKey("pulse-amplitude", "dorsalis-pedis", Side.LEFT),
              new FindingValue.Grade(i < 3 ? 1 : 2)));
      Instant taken = ago(14 + 120 * i);
      String id = "A-" + (23 - i);
      assessments.add(
          new Assessment(
              id,
              retracted ? 2 : 1,
              retracted ? Assessment.Status.RETRACTED : Assessment.Status.FINAL,
              "V-104",
              "P-104",
              taken,
              taken.plusSeconds(60),
              Assessment.Source.BEDSIDE,
              "t.almeida",
              retracted ? "wrong patient" : null,
              findings));
      if (!retracted) {
        snapshots.add(snapshot(id, taken, (int) Math.round(1 + 6 * ill), i == 0));
      }
    }
    return new PatientHistory("V-104", assessments, snapshots, true);
  }

  private static Finding number(String code, double value, String unit) {
    return Finding.quantity(code, String.valueOf(Math.round(value)), unit);
  }

  private static Snapshot snapshot(String id, Instant taken, int total, boolean partial) {
    var inputs =
        List.of(
            new ScoredInput(
                "respiratory-rate",
                Scalar.of(BigDecimal.TEN),
                "/min",
                taken,
                total > 4 ? 2 : 0,
                "a",
                "b",
                TABLE,
                null),
            new ScoredInput(
                "heart-rate",
                Scalar.of(BigDecimal.TEN),
                "/min",
                taken,
                total > 5 ? 2 : total > 3 ? 1 : 0,
                "a",
                "b",
                TABLE,
                null));
    Score score =
        Sample.score(
            total,
            partial ? total + 2 : total,
            2,
            partial ? List.of("temperature") : List.of(),
            inputs);
    return new Snapshot(
        "V-104",
        taken,
        id,
        1,
        false,
        false,
        "shipped-1",
        0,
        List.of(score),
        snapshot().drift(),
        List.of(),
        List.of(),
        taken,
        List.of(),
        null,
        null,
        null,
        null);
  }
}
