package org.driftward.scoring.stream;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;
import static org.driftward.scoring.stream.Given.adult;
import static org.driftward.scoring.stream.Given.after;
import static org.driftward.scoring.stream.Given.set;
import static org.driftward.scoring.stream.Topo.news2;

import java.nio.file.Path;
import java.time.Instant;
import java.time.LocalDate;
import org.apache.kafka.common.header.internals.RecordHeaders;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Fixtures;
import org.driftward.scoring.stream.state.Memory;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Points are those of NEWS2, RCP 2017, chart 1. */
class ScoringTopologyTest {

  @TempDir Path state;
  private Topo topo;

  @BeforeEach
  void open() {
    topo = new Topo(state);
  }

  @AfterEach
  void close() {
    topo.close();
  }

  @Test
  void shouldScoreTheFirstSet() {
    topo.send(adult("V-1", 1));

    topo.send(
        set("A-1").with("respiratory-rate", 21, "/min").with("heart-rate", 95, "/min").made(),
        Instant.ofEpochMilli(1_767_600_000_000L));

    var snapshot = topo.onlySnapshot();
    assertThat(snapshot.encounter()).isEqualTo("V-1");
    assertThat(snapshot.assessment()).isEqualTo("A-1");
    assertThat(snapshot.asOf()).isEqualTo(after(0));
    assertThat(snapshot.sequence()).isEqualTo(1);
    assertThat(snapshot.latest()).isTrue();
    assertThat(snapshot.acceptedAt()).isEqualTo(Instant.ofEpochMilli(1_767_600_000_000L));
    var score = news2(snapshot);
    assertThat(score.complete()).isTrue();
    assertThat(score.low()).isEqualByComparingTo("3");
    assertThat(score.high()).isEqualByComparingTo("3");
    assertThat(score.inputs())
        .filteredOn(input -> input.points() > 0)
        .extracting(ScoredInput::code, ScoredInput::points)
        .containsExactlyInAnyOrder(tuple("respiratory-rate", 2), tuple("heart-rate", 1));
    assertThat(snapshot.lastSet()).isEqualTo(after(0));
    assertThat(snapshot.nextDue()).isAfter(after(0));
  }

  @Test
  void shouldGiveBoundsForAPartialSet() {
    topo.send(adult("V-1", 1));

    topo.send(set("A-1").without("respiratory-rate").without("temperature").made());

    var score = news2(topo.onlySnapshot());
    assertThat(score.complete()).isFalse();
    assertThat(score.low()).isEqualByComparingTo("0");
    assertThat(score.high()).isEqualByComparingTo("6");
    assertThat(score.missing()).containsExactly("respiratory-rate", "temperature");
  }

  @Test
  void shouldFillAPartialSetFromTheOneBeforeWhileThatServes() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").with("temperature", 39, "Cel").made());
    topo.snapshots();

    topo.send(set("A-2").at(1).without("temperature").made());

    var score = news2(topo.onlySnapshot());
    assertThat(score.complete()).isTrue();
    assertThat(score.low()).isEqualByComparingTo("1");
  }

  @Test
  void shouldObeyAPrescribedOxygenScaleFromItsTimeOn() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").with("oxygen-saturation", 90, "%").made());
    topo.send(set("A-2").at(4).with("oxygen-saturation", 90, "%").made());
    topo.snapshots();

    topo.send(Given.oxygenScale2("V-1", 2, 10));

    var snapshot = topo.onlySnapshot();
    assertThat(snapshot.assessment()).isEqualTo("A-2");
    assertThat(snapshot.carePlan()).isEqualTo(1);
    assertThat(snapshot.latest()).isTrue();
    assertThat(news2(snapshot).low()).isEqualByComparingTo("0");
    assertThat(topo.listener().known().get("V-1").get("A-1"))
        .satisfies(first -> assertThat(news2(first).low()).isEqualByComparingTo("3"));
  }

  @Test
  void shouldGoBackToTheStandardScaleWhenThePlanEnds() {
    topo.send(adult("V-1", 1), Given.oxygenScale2("V-1", 0, 2));
    topo.send(set("A-1").with("oxygen-saturation", 90, "%").made());
    assertThat(news2(topo.onlySnapshot()).low()).isEqualByComparingTo("0");

    topo.send(set("A-2").at(2).with("oxygen-saturation", 90, "%").made());

    var snapshot = topo.onlySnapshot();
    assertThat(snapshot.carePlan()).isZero();
    assertThat(news2(snapshot).low()).isEqualByComparingTo("3");
  }

  @Test
  void shouldGoOnAfterARestart() {
    topo.send(adult("V-1", 1));
    for (int hour = 0; hour < 8; hour++) {
      topo.send(set("A-" + hour).at(hour).with("heart-rate", 70 + hour, "/min").made());
    }
    topo.snapshots();

    topo.restart();
    topo.send(set("A-8").at(8).with("heart-rate", 130, "/min").made());

    var snapshot = topo.onlySnapshot();
    assertThat(snapshot.sequence()).isEqualTo(9);
    assertThat(news2(snapshot).usual()).isEqualByComparingTo("0");
    assertThat(news2(snapshot).rise()).isEqualByComparingTo("2");
    assertThat(snapshot.drift())
        .filteredOn(drift -> drift.code().equals("heart-rate"))
        .singleElement()
        .satisfies(drift -> assertThat(drift.worse()).isTrue());
  }

  @Test
  void shouldScoreBeforeTheEncounterIsKnownAndAgainWhenItIs() {
    topo.send(set("A-1").made());
    assertThat(topo.snapshots()).hasSize(1);

    topo.send(Given.encounter("V-1", 1, LocalDate.of(2023, 5, 1), null));

    var snapshot = topo.onlySnapshot();
    assertThat(snapshot.latest()).isTrue();
    assertThat(snapshot.scores()).extracting(Score::id).doesNotContain("news2");
  }

  @Test
  void shouldMoveTheHistoryOfAMergedEncounterToTheSurvivor() {
    topo.send(adult("V-1", 1), adult("V-2", 1));
    topo.send(set("A-1").in("V-2").made());
    topo.send(set("A-2").at(1).made());
    topo.snapshots();

    topo.send(Given.encounter("V-2", 2, LocalDate.of(1960, 5, 1), "V-1"));
    topo.send(set("A-3").at(2).in("V-2").made());

    var known = topo.listener().known();
    assertThat(known.get("V-1")).containsOnlyKeys("A-1", "A-2", "A-3");
    assertThat(known.get("V-1").values()).noneMatch(Snapshot::withdrawn);
    assertThat(known.get("V-2")).containsOnlyKeys("A-1", "A-3");
    assertThat(known.get("V-2").values()).allMatch(Snapshot::withdrawn);
    assertThat(topo.listener().latest()).containsOnlyKeys("V-1");
  }

  @Test
  void shouldSetAsideWhatCannotBeReadAndGoOn() {
    var poison = "{\"id\":\"A-0\",\"takenAt\":\"yesterday\"}".getBytes(UTF_8);

    topo.send(Topic.ASSESSMENTS, "V-1", poison, new RecordHeaders());
    topo.send(set("A-1").made());

    assertThat(topo.onlySnapshot().assessment()).isEqualTo("A-1");
    var rejection = topo.rejected().get(0);
    assertThat(rejection.bytes()).isEqualTo(poison);
    assertThat(rejection.target()).isEqualTo(Topic.ASSESSMENTS.topic());
    assertThat(rejection.id()).isEqualTo("scoring-driftward.assessments-0-0");
    assertThat(rejection.faults()).extracting(Fault::rule).containsExactly("malformed");
    assertThat(topo.counted("driftward.scoring.set.aside")).isEqualTo(1);
  }

  @Test
  void shouldSetAsideARecordUnderAForeignKey() {
    var bytes = JsonFormat.of(Assessment.class).write(set("A-1").in("V-2").made());

    topo.send(Topic.ASSESSMENTS, "V-1", bytes, new RecordHeaders());

    assertThat(topo.snapshots()).isEmpty();
    assertThat(topo.rejected().get(0).faults())
        .extracting(Fault::rule)
        .containsExactly("wrong-key");
  }

  @Test
  void shouldKeepEncountersApart() {
    topo.send(set("A-1").in("V-1").with("heart-rate", 140, "/min").made());
    topo.send(set("A-2").in("V-11").made());
    topo.send(set("A-3").in("V-1").at(1).made());

    assertThat(topo.listener().known().get("V-11")).containsOnlyKeys("A-2");
    assertThat(topo.listener().known().get("V-1")).containsOnlyKeys("A-1", "A-3");
  }

  @ParameterizedTest
  @CsvSource({"2, 0", "1, 1", "2, 2", "1, 100"})
  void shouldSayTheSameWithMoreEncountersThanFitInMemory(int whole, int packed) {
    sendInTurn(topo);
    var sent = topo.snapshots();

    try (var small = new Topo(state.resolve("small"), new Memory(whole, packed))) {
      sendInTurn(small);

      assertThat(small.snapshots()).isEqualTo(sent);
    }
    assertThat(sent).hasSize(60).allMatch(Snapshot::latest);
    assertThat(sent.get(59).sequence()).isEqualTo(12);
    assertThat(sent.get(59).drift()).isNotEmpty();
    assertThat(sent.get(59).trend()).isNotEmpty();
    assertThat(news2(sent.get(59)).usual()).isNotNull();
  }

  /** Five patients, a set of each every hour, with a pulse that rises faster in each. */
  private static void sendInTurn(Topo topo) {
    for (int hour = 0; hour < 12; hour++) {
      for (int v = 0; v < 5; v++) {
        var set = set("A-" + v + "-" + hour).in("V-" + v).at(hour);
        topo.send(set.with("heart-rate", 70 + hour * v, "/min").made());
      }
    }
  }

  @Test
  void shouldLetAnEditionReachEncountersThatNothingArrivesFor() {
    for (int i = 0; i < 120; i++) {
      topo.send(set("A-" + i).in("V-" + i).made());
    }
    assertThat(topo.snapshots()).hasSize(120);

    topo.adopt(Fixtures.edition(80, "second", Given.MORNING));
    passes(3);

    assertThat(topo.snapshots())
        .hasSize(120)
        .allMatch(Snapshot::latest)
        .allMatch(snapshot -> snapshot.sequence() == 2)
        .extracting(Snapshot::policy)
        .containsOnly("second");
    passes(3);
    assertThat(topo.snapshots()).isEmpty();
  }

  @Test
  void shouldAdoptAnEditionBeforeTheNextRecordAndKeepItOverARestart() {
    topo.send(set("A-1").made());
    topo.adopt(Fixtures.edition(80, "second", Given.MORNING));
    topo.send(set("A-2").at(1).made());
    topo.restart();
    topo.send(set("A-3").at(2).made());
    passes(1);

    assertThat(topo.listener().known().get("V-1").values())
        .extracting(Snapshot::policy)
        .containsOnly("second");
    assertThat(topo.listener().latest().get("V-1").assessment()).isEqualTo("A-3");
  }

  private void passes(int pauses) {
    for (int i = 0; i < pauses; i++) {
      topo.passes(Walk.PAUSE);
    }
  }
}
