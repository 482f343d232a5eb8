package org.driftward.dashboard.stream;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.driftward.dashboard.Samples.assessment;
import static org.driftward.dashboard.Samples.at;
import static org.driftward.dashboard.Samples.change;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.episode;
import static org.driftward.dashboard.Samples.plan;
import static org.driftward.dashboard.Samples.snapshot;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.dashboard.Configs;
import org.driftward.dashboard.DashboardDatabase;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.dashboard.store.StoredWards;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** From a real broker to the rows of a real PostgreSQL. */
class ReadModelPartTest {

  private static final Clock CLOCK = Clock.fixed(at(10), ZoneOffset.UTC);
  private static final Duration SOON = Duration.ofSeconds(60);

  private static Broker broker;

  private final SimpleMeterRegistry meters = new SimpleMeterRegistry();
  private StoredWards wards;
  private ReadModelPart part;

  @BeforeAll
  static void startBroker() {
    broker = Broker.start();
  }

  @AfterAll
  static void stopBroker() {
    broker.close();
  }

  @BeforeEach
  void start() {
    DataSource database = DashboardDatabase.emptied();
    var config = Configs.of(Map.of());
    wards = DashboardDatabase.wards(CLOCK, config);
    part =
        new ReadModelPart(
            broker.access(),
            new ReadModel(new Database(database)),
            config,
            new BoardMetrics(meters, CLOCK),
            DashboardDatabase.quarantine());
    part.start();
  }

  @AfterEach
  void stop() {
    part.stop();
  }

  @Test
  void shouldBringEveryTopicToTheBoardAndGoOnAfterWhatCannotBeRead() {
    broker.send(
        List.of(
            sent(encounter("V", "W1", "1", 1)),
            new ProducerRecord<>(
                Topic.SNAPSHOTS.topic(), "V", "not JSON".getBytes(StandardCharsets.UTF_8)),
            // PostgreSQL keeps no U+0000 in JSON: it refuses the record, not the batch.
            sent(encounter("Z\u0000", "W1", "9", 1)),
            sent(assessment("V", "A1", 1, 0)),
            sent(snapshot("V", "A1", 1, 0, 6, 6)),
            sent(plan("V", 1, "ward care")),
            sent(change(1, "opened", episode("E", "V", 1, EpisodeState.OPEN, Level.HIGH, 20)))));

    await()
        .atMost(SOON)
        .untilAsserted(
            () -> {
              var cards = wards.board("W1").cards();
              assertThat(cards).hasSize(1);
              var card = cards.get(0);
              assertThat(card.score()).isNotNull();
              assertThat(card.level()).isEqualTo(Level.HIGH);
              assertThat(card.ceiling()).isEqualTo("ward care");
              assertThat(wards.history("V", at(-1), at(1)).assessments()).hasSize(1);
            });
    await().atMost(SOON).until(() -> meters.counter("driftward.board.unreadable").count() == 2);
    assertThat(part.condition().well()).isTrue();
    var accepted = meters.get("driftward.board.latency").tag("from", "accepted").timer();
    assertThat(accepted.count()).isEqualTo(1);
    assertThat(accepted.totalTime(TimeUnit.MINUTES)).isEqualTo(9);
    var taken = meters.get("driftward.board.latency").tag("from", "taken").timer();
    assertThat(taken.totalTime(TimeUnit.MINUTES)).isEqualTo(10);
  }

  @Test
  void shouldGoOnWhereItStoppedAndLoseNothing() {
    var records = new ArrayList<ProducerRecord<String, byte[]>>();
    for (int i = 0; i < 200; i++) {
      records.add(sent(encounter("R" + i, "W7", Integer.toString(i), 1)));
    }
    broker.send(records.subList(0, 100));
    part.stop();
    assertThat(part.condition().well()).isFalse();
    broker.send(records.subList(100, 200));
    part.start();

    await().atMost(SOON).until(() -> wards.board("W7").cards().size() == 200);
  }

  private static ProducerRecord<String, byte[]> sent(Encounter encounter) {
    return sent(Topic.ENCOUNTERS, encounter.id(), Encounter.class, encounter);
  }

  private static ProducerRecord<String, byte[]> sent(Assessment assessment) {
    return sent(Topic.ASSESSMENTS, assessment.encounter(), Assessment.class, assessment);
  }

  private static ProducerRecord<String, byte[]> sent(Snapshot snapshot) {
    return sent(Topic.SNAPSHOTS, snapshot.encounter(), Snapshot.class, snapshot);
  }

  private static ProducerRecord<String, byte[]> sent(CarePlan plan) {
    return sent(Topic.CARE_PLANS, plan.encounter(), CarePlan.class, plan);
  }

  private static ProducerRecord<String, byte[]> sent(EpisodeChange change) {
    return sent(Topic.EPISODES, change.episode().encounter(), EpisodeChange.class, change);
  }

  private static <T> ProducerRecord<String, byte[]> sent(
      Topic topic, String key, Class<T> type, T value) {
    return new ProducerRecord<>(topic.topic(), key, JsonFormat.of(type).write(value));
  }
}
