package org.driftward.scoring.rescore;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.tuple;
import static org.driftward.scoring.rescore.Log.after;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import org.driftward.ingest.contract.Assessment.Status;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.compare.Difference;
import org.driftward.scoring.core.timeline.Fixtures;
import org.driftward.scoring.edition.EditionFile;
import org.driftward.scoring.edition.EditionsInForce;
import org.driftward.scoring.rescore.Rescores.ConflictException;
import org.driftward.scoring.stream.ScoringStreams;
import org.driftward.scoring.stream.TestSettings;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * The log scored again on a real broker. The edition tried has a score of the ward's own (no
 * source): one point for a pulse of 80 or more.
 */
class RescoresTest {

  private static final Duration PATIENCE = Duration.ofMinutes(2);

  @TempDir Path folder;
  private Broker broker;
  private Log log;
  private EditionsInForce editions;
  private TestSettings settings;
  private Rescores rescores;

  @BeforeEach
  void open() {
    broker = Broker.start();
    log = new Log(broker);
    editions = Fixtures.editions();
    settings = new TestSettings(folder.resolve("scoring"));
    rescores =
        new Rescores(broker.access(), settings, editions, Clock.fixed(after(24), ZoneOffset.UTC));
  }

  @AfterEach
  void close() {
    rescores.stop();
    broker.close();
  }

  private static EditionFile from(int hour) {
    return Fixtures.pulseFrom(80, "tried", after(hour));
  }

  private RescoreView finished(EditionFile file) throws InterruptedException {
    var id = rescores.begin(file, "admin").id();
    await(() -> !rescores.find(id).orElseThrow().state().equals("running"));
    return rescores.find(id).orElseThrow();
  }

  private List<Difference> differences(RescoreView view) {
    try (var all = rescores.differences(view.id()).orElseThrow()) {
      return all.toList();
    }
  }

  @Test
  void shouldReportEveryDifferenceAndSendNothing() throws Exception {
    log.admitted("V-1", null);
    log.observed("A-early", "V-1", 1, 90);
    log.observed("A-late", "V-1", 5, 90);
    log.observed("A-other", "V-2", 1, 90);

    var view = finished(from(3));

    assertThat(view.state()).isEqualTo("finished");
    assertThat(view.counts().records()).isEqualTo(4);
    assertThat(view.counts().encounters()).isEqualTo(2);
    assertThat(view.counts().moments()).isEqualTo(3);
    assertThat(view.counts().differing()).isEqualTo(1);
    assertThat(view.counts().differences()).containsOnlyKeys("score");
    assertThat(view.counts().differingEncounters())
        .containsExactly(new Counts.OfEncounter("V-1", 2, 1));
    assertThat(differences(view))
        .containsExactly(new Difference("V-1", "A-late", after(5), "score:pulse", null, "1, any"));
    assertThat(log.snapshots()).isEmpty();
  }

  @Test
  void shouldJudgeWhatCountsInTheEnd() throws Exception {
    log.observed("A-1", "V-1", 5, 90);
    log.observed("A-1", 2, Status.AMENDED, "V-1", 5, 70);
    log.observed("A-2", "V-1", 6, 90);
    log.observed("A-2", 2, Status.RETRACTED, "V-1", 6, 90);

    var view = finished(from(3));

    assertThat(view.counts().moments()).isEqualTo(1);
    assertThat(differences(view)).extracting(Difference::after).containsExactly("0, any");
  }

  /** Three survivors and three merged ones: the two of a pair are often in different partitions. */
  @Test
  void shouldCountWhatAMergedEncounterBroughtInItsSurvivor() throws Exception {
    for (int i = 0; i < 3; i++) {
      log.admitted("V-left-" + i, "V-stays-" + i);
      log.observed("A-left-" + i, "V-left-" + i, 5, 90);
      log.observed("A-stays-" + i, "V-stays-" + i, 6, 90);
    }

    assertThat(differences(finished(from(3))))
        .extracting(Difference::encounter)
        .containsOnly("V-stays-0", "V-stays-1", "V-stays-2")
        .hasSize(6);
  }

  @Test
  void shouldSaySoWhereAnEarlierCarePlanIsNoLongerInTheLog() throws Exception {
    log.observed("A-1", "V-1", 5, 70);
    log.signed("V-1", 3, 1);
    log.observed("A-2", "V-2", 5, 70);
    log.signed("V-2", 1, 1);

    assertThat(finished(from(3)).counts().plansMissing()).containsExactly("V-1");
  }

  @Test
  void shouldPassOverWhatScoringSetsAside() throws Exception {
    log.send(Topic.ASSESSMENTS, "V-1", "no JSON".getBytes(StandardCharsets.UTF_8));
    log.observed("A-1", "V-1", 5, 90);

    var counts = finished(from(3)).counts();

    assertThat(counts.unreadable()).isEqualTo(1);
    assertThat(counts.moments()).isEqualTo(1);
  }

  @Test
  void shouldRefuseABrokenEditionAndATakenVersion() {
    var broken = new EditionFile(after(0), "version: tried", List.of("id: x"), null, null);
    var taken = Fixtures.pulseFrom(80, "shipped-1", after(0));

    assertThatThrownBy(() -> rescores.begin(broken, "admin")).hasMessageContaining("score 1:1");
    assertThatThrownBy(() -> rescores.begin(taken, "admin")).hasMessageContaining("shipped-1");
    assertThat(rescores.list()).isEmpty();
  }

  @Test
  void shouldJudgeAgainWhatWasSentOnceAdopted() throws Exception {
    var streams = streams(editions, "scoring");
    streams.start();
    log.observed("A-early", "V-1", 1, 90);
    log.observed("A-late", "V-1", 5, 90);
    await(() -> log.snapshots().size() == 2);
    var view = finished(from(3));

    var adopted = rescores.adopt(view.id(), "admin").orElseThrow();

    assertThat(adopted.state()).isEqualTo("adopted");
    await(() -> log.snapshots().size() == 3);
    assertThat(log.snapshots())
        .extracting(Snapshot::assessment, Snapshot::policy, Snapshot::sequence)
        .last()
        .isEqualTo(tuple("A-late", "tried", 3L));
    assertThatThrownBy(() -> rescores.adopt(view.id(), "admin"))
        .isInstanceOf(ConflictException.class);
    streams.stop();

    var restarted = streams(Fixtures.editions(), "elsewhere");
    restarted.start();
    log.observed("A-next", "V-1", 6, 90);
    await(() -> log.snapshots().size() == 4);
    restarted.stop();
    assertThat(log.snapshots()).last().extracting(Snapshot::policy).isEqualTo("tried");
  }

  private ScoringStreams streams(EditionsInForce known, String state) {
    return new ScoringStreams(
        broker.access(),
        new TestSettings(folder.resolve(state)),
        known,
        Fixtures.CATALOGUE,
        new SimpleMeterRegistry());
  }

  @FunctionalInterface
  private interface Fact {
    boolean holds();
  }

  private static void await(Fact fact) throws InterruptedException {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (!fact.holds()) {
      if (System.nanoTime() > end) {
        throw new AssertionError("waited for " + PATIENCE);
      }
      Thread.sleep(200);
    }
  }
}
