package org.driftward.dashboard.schema;

import static org.driftward.dashboard.Samples.at;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.LocalDate;
import java.util.List;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Reason;
import org.driftward.dashboard.Samples;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.contract.UnmappedCode;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.StandingFact;
import org.driftward.scoring.contract.StandingFact.Fact;
import org.driftward.scoring.contract.Trend;
import org.driftward.scoring.contract.UrgentFinding;

/** Records that together use every field, and others that leave out what may be left out. */
final class SchemaSamples {

  static final List<Assessment> ASSESSMENTS =
      List.of(
          new Assessment(
              "A-1",
              2,
              Assessment.Status.AMENDED,
              "V-1",
              "P-1",
              at(0),
              at(1),
              Assessment.Source.BEDSIDE,
              "nurse",
              "typing error",
              List.of(
                  Finding.quantity("temperature", "38.20", "Cel"),
                  Finding.coded("consciousness", "alert"),
                  new Finding(
                      new FindingKey("pulse-amplitude", "dorsalis-pedis", Side.LEFT),
                      new FindingValue.Grade(1)),
                  new Finding(FindingKey.of("note"), new FindingValue.Text("slept well")))),
          Samples.assessment("V-1", "A-2", 1, 5),
          Samples.retracted("V-1", "A-2", 2, 5));

  static final List<Encounter> ENCOUNTERS =
      List.of(
          Samples.encounter("V-1", "heron", "3", 1),
          new Encounter(
              "V-2",
              new Patient("P-2", null, null, null),
              List.of(new Stay("heron", null, at(0)), new Stay("linden", "4", at(9))),
              at(0),
              at(60),
              "V-1",
              at(70),
              3),
          new Encounter(
              "V-3",
              new Patient("P-3", "Quillwater, Maren", LocalDate.of(1950, 4, 3), Patient.Sex.OTHER),
              List.of(new Stay("heron", "1", at(0))),
              at(0),
              null,
              null,
              1));

  static final List<CarePlan> PLANS =
      List.of(
          Samples.plan("V-1", 1, "ward care"),
          new CarePlan(
              "V-1",
              2,
              1,
              List.of(
                  new CarePlan.Limit("heart-rate", new BigDecimal("40"), new BigDecimal("120"))
                      .replacing(new BigDecimal("51"), new BigDecimal("90")),
                  new CarePlan.Limit("temperature", null, new BigDecimal("38.5"))),
              Duration.ofHours(4),
              null,
              null,
              List.of("pregnant"),
              at(0),
              "usual for this patient",
              "doctor",
              at(0),
              at(600),
              "Wessel, Ingrid",
              "consultant",
              "confused",
              List.of(
                  new StandingFact(Fact.POPULATIONS, "30 weeks", "doctor", at(0), at(10080)),
                  new StandingFact(
                      Fact.USUAL_CONSCIOUSNESS, "dementia", "doctor", at(0), at(10080)))));

  static final List<Snapshot> SNAPSHOTS =
      List.of(
          full(),
          Samples.snapshot("V-1", "A-2", 2, 5, 2, 6),
          Samples.withdrawn("V-1", "A-2", 3, 5));

  static final List<EpisodeChange> CHANGES =
      List.of(
          Samples.change(
              1, "opened", Samples.episode("E-1", "V-1", 1, EpisodeState.OPEN, Level.HIGH, 20)),
          new EpisodeChange(
              2,
              at(3),
              "held",
              "charge",
              "for an X-ray",
              "procedure",
              new Episode(
                  "E-1",
                  2,
                  "V-1",
                  "heron",
                  "3",
                  EpisodeState.HELD,
                  Level.MEDIUM,
                  "charge",
                  "Tamsin Orchard",
                  at(0),
                  at(30),
                  Awaiting.HOLD_END,
                  1,
                  "charge nurse",
                  List.of(new Reason("score-high", Level.HIGH, "the score is high", at(0))),
                  at(1),
                  at(2),
                  null,
                  null)),
          new EpisodeChange(
              3,
              at(40),
              "closed",
              "driftward",
              null,
              null,
              Samples.episode("E-1", "V-1", 3, EpisodeState.CLOSED, Level.LOW, 40)));

  static final List<Rejection> REJECTIONS =
      List.of(
          Rejection.of(
              "R-1",
              new Received(
                  "http/feed",
                  Assessment.Source.FHIR,
                  "POST /fhir",
                  "application/fhir+json",
                  "{".getBytes(StandardCharsets.UTF_8)),
              at(0),
              List.of(new Fault("", "malformed-resource", "This is no R4 Bundle"))),
          Rejection.of(
              "R-2",
              new Received(
                      "replay",
                      Assessment.Source.FHIR,
                      "POST /fhir",
                      "application/fhir+json",
                      "[".getBytes(StandardCharsets.UTF_8))
                  .withUnmapped(
                      List.of(
                          new UnmappedCode(
                              new ForeignCode("http/feed", "urn:gateway", "HF"),
                              "Heart rate",
                              "bpm")))
                  .asReplayOf("R-1"),
              at(5),
              List.of(new Fault("", "malformed-resource", "This is no R4 Bundle"))));

  private SchemaSamples() {}

  private static Snapshot full() {
    return new Snapshot(
        "V-1",
        at(0),
        "A-1",
        1,
        true,
        false,
        "policy-1",
        1,
        List.of(
            new Score(
                "news2",
                "NEWS2",
                "2017",
                new BigDecimal("3"),
                new BigDecimal("6"),
                false,
                "low",
                "medium",
                2,
                new BigDecimal("1.5"),
                List.of("temperature"),
                List.of("heart-rate"),
                List.of(
                    new ScoredInput(
                        "heart-rate",
                        Scalar.of(new BigDecimal("118")),
                        "/min",
                        at(0),
                        2,
                        "111 to 130",
                        "Pulse",
                        "RCP 2017",
                        null),
                    new ScoredInput(
                        "consciousness",
                        Scalar.of("alert"),
                        null,
                        at(0),
                        0,
                        "alert",
                        "Consciousness",
                        "RCP 2017",
                        "Glasgow Coma Scale 15")))),
        List.of(
            new Drift(
                "pupil-size",
                "iris",
                Side.LEFT,
                5.0,
                "mm",
                3.0,
                0.5,
                4.0,
                true,
                4.5,
                8,
                at(-600),
                at(-60))),
        List.of(
            new Trend(
                "heart-rate",
                "wrist",
                Side.RIGHT,
                4.5,
                0.01,
                12,
                8,
                at(-300),
                true,
                at(90),
                at(60),
                at(120),
                131.0)),
        List.of(
            new ChangedFinding(
                "pulse-amplitude",
                "dorsalis-pedis",
                Side.LEFT,
                Scalar.of(new BigDecimal("2")),
                Scalar.of(new BigDecimal("0")),
                at(0),
                Group.LIMB_CIRCULATION,
                "the pulse is gone")),
        List.of(
            new UrgentFinding(
                "wheeze",
                "front-upper",
                Side.LEFT,
                Scalar.of("present"),
                "1",
                at(0),
                Level.HIGH,
                1.5,
                "the words of the rule",
                "local policy")),
        at(0),
        List.of("temperature"),
        at(60),
        Duration.ofHours(1),
        "every hour",
        at(1));
  }
}
