package org.driftward.scoring.stream;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.scoring.stream.Given.adult;
import static org.driftward.scoring.stream.Given.after;
import static org.driftward.scoring.stream.Given.set;
import static org.driftward.scoring.stream.Topo.news2;

import java.nio.file.Path;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * What comes late, twice, corrected or taken back, through the topology. Points are those of NEWS2,
 * RCP 2017, chart 1.
 */
class RevisionsTest {

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
  void shouldRewriteWhatALateRecordChanges() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").made());
    topo.send(set("A-3").at(2).without("temperature").made());
    topo.snapshots();

    topo.send(set("A-2").at(1).with("temperature", 40, "Cel").made());

    var sent = topo.snapshots();
    assertThat(sent).extracting(Snapshot::assessment).containsExactly("A-2", "A-3");
    assertThat(sent).extracting(Snapshot::latest).containsExactly(false, true);
    assertThat(sent).extracting(Snapshot::sequence).containsExactly(3L, 4L);
    assertThat(sent).allSatisfy(each -> assertThat(news2(each).low()).isEqualByComparingTo("2"));
    assertThat(topo.counted("driftward.scoring.rewrites")).isEqualTo(1);
  }

  @Test
  void shouldLeaveTheNewestPictureWhereALateRecordSaysNothingOfIt() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-2").at(40).made());
    topo.snapshots();

    topo.send(set("A-1").with("heart-rate", 140, "/min").made());

    var snapshot = topo.onlySnapshot();
    assertThat(snapshot.assessment()).isEqualTo("A-1");
    assertThat(snapshot.latest()).isFalse();
    assertThat(topo.listener().latest().get("V-1").assessment()).isEqualTo("A-2");
  }

  @Test
  void shouldCorrect() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").with("heart-rate", 190, "/min").made());
    topo.snapshots();

    topo.send(set("A-1").amended(2).with("heart-rate", 90, "/min").made());

    var snapshot = topo.onlySnapshot();
    assertThat(snapshot.latest()).isTrue();
    assertThat(snapshot.sequence()).isEqualTo(2);
    assertThat(news2(snapshot).low()).isEqualByComparingTo("0");
  }

  @Test
  void shouldIgnoreARevisionThatAHigherOneHasReplaced() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").amended(2).with("heart-rate", 90, "/min").made());
    topo.snapshots();

    topo.send(set("A-1").with("heart-rate", 190, "/min").made());

    assertThat(topo.snapshots()).isEmpty();
  }

  @Test
  void shouldMoveAnAssessmentWhoseTimeIsCorrected() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").made());
    topo.send(set("A-2").at(9).with("heart-rate", 120, "/min").made());
    topo.snapshots();

    topo.send(set("A-2").amended(2).at(-1).with("heart-rate", 120, "/min").made());

    var sent = topo.snapshots();
    assertThat(sent).extracting(Snapshot::assessment).containsExactly("A-2", "A-1");
    assertThat(sent.get(0).asOf()).isEqualTo(after(-1));
    assertThat(sent).extracting(Snapshot::latest).containsExactly(false, true);
  }

  @Test
  void shouldWithdrawARetractedAssessmentAndShowThePictureBefore() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").made());
    topo.send(set("A-2").at(1).with("heart-rate", 140, "/min").made());
    topo.snapshots();

    topo.send(set("A-2").at(1).retracted(2).made());

    var sent = topo.snapshots();
    assertThat(sent).extracting(Snapshot::assessment).containsExactly("A-2", "A-1");
    assertThat(sent).extracting(Snapshot::withdrawn).containsExactly(true, false);
    assertThat(sent).extracting(Snapshot::latest).containsExactly(false, true);
    assertThat(sent.get(0).scores()).isEmpty();
    assertThat(news2(sent.get(1)).low()).isEqualByComparingTo("0");
  }

  @Test
  void shouldLetARetractionWinThatComesFirst() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").retracted(2).made());
    assertThat(topo.onlySnapshot().withdrawn()).isTrue();

    topo.send(set("A-1").made());

    assertThat(topo.snapshots()).isEmpty();
    assertThat(topo.listener().latest()).isEmpty();
  }

  @Test
  void shouldLetARetractionWinThatCameFirstAndBeforeARestart() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").retracted(2).made());
    topo.restart();

    topo.send(set("A-1").made());

    assertThat(topo.snapshots()).isEmpty();
    assertThat(topo.listener().latest()).isEmpty();
  }

  @Test
  void shouldSayNothingOfARepetition() {
    topo.send(adult("V-1", 1));
    topo.send(set("A-1").made());
    topo.snapshots();

    topo.send(set("A-1").made());
    topo.send(adult("V-1", 1));

    assertThat(topo.snapshots()).isEmpty();
  }

  @Test
  void shouldPickTheSameOfTwoContentsUnderOneRevisionWhateverTheOrder() {
    var one = set("A-1").with("heart-rate", 100, "/min").made();
    var other = set("A-1").with("heart-rate", 120, "/min").made();
    topo.send(one);
    topo.send(other);
    var first = topo.listener().known().get("V-1").get("A-1");

    try (var reversed = new Topo(state.resolve("reversed"))) {
      reversed.send(other);
      reversed.send(one);

      assertThat(reversed.listener().known().get("V-1").get("A-1")).isEqualTo(first);
    }
  }
}
