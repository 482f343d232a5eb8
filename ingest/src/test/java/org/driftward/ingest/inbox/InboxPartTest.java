package org.driftward.ingest.inbox;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.driftward.ingest.inbox.InboxDoor.heartRate;
import static org.driftward.ingest.kafka.House.encounter;
import static org.driftward.ingest.kafka.House.outcome;

import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Topic;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** The inbox while things fail, on a real broker. Delivery as Kafka's own semantics define it. */
@Timeout(180)
class InboxPartTest {

  private static final Duration PATIENCE = Duration.ofSeconds(90);

  private Broker broker;

  @BeforeEach
  void open() {
    broker = Broker.start();
  }

  @AfterEach
  void close() {
    broker.close();
  }

  @Test
  void shouldKeepEveryRecordOnceThoughTheBrokerAndAProcessGoAway() throws Exception {
    int many = 6_000;
    try (var stays = new InboxDoor(broker)) {
      try (var leaves = new InboxDoor(broker)) {
        outcome(stays.house.intake.put("test", encounter("V-1", "ward-a", "1")));
        broker.send(records(0, many / 3));
        await()
            .atMost(PATIENCE)
            .until(
                () ->
                    stays.count("driftward.inbox.read") + leaves.count("driftward.inbox.read") > 0);
      }
      broker.send(records(many / 3, 2 * many / 3));
      broker.stop();
      broker.startAgain();
      broker.send(records(2 * many / 3, many));

      await()
          .atMost(PATIENCE)
          .pollInterval(Duration.ofSeconds(1))
          .untilAsserted(() -> assertThat(kept()).hasSizeGreaterThanOrEqualTo(many));
      assertThat(kept())
          .containsExactlyInAnyOrderElementsOf(
              IntStream.range(0, many).mapToObj(i -> "A-" + i).toList());
    }
  }

  @Test
  void shouldPauseAndSayItWhileNobodyCanTellWhoIsWhere() throws Exception {
    try (var door = new InboxDoor(broker)) {
      outcome(door.house.intake.put("test", encounter("V-2", "ward-a", "2")));
      door.house.directory.stop();
      broker.send(List.of(heartRate("A-1", "V-not-known", 80), heartRate("A-2", "V-2", 81)));

      await().atMost(PATIENCE).until(() -> door.gauge("driftward.inbox.paused") == 1);
      assertThat(door.part.condition().well()).isFalse();
      await().atMost(PATIENCE).until(() -> door.gauge("driftward.inbox.lag") == 2);

      door.house.directory.start();
      await().atMost(PATIENCE).untilAsserted(() -> assertThat(kept()).containsExactly("A-2"));
      assertThat(broker.read(Topic.REJECTED)).hasSize(1);
      await().atMost(PATIENCE).until(() -> door.gauge("driftward.inbox.lag") == 0);
      assertThat(door.part.condition().well()).isTrue();
      assertThat(door.count("driftward.inbox.read")).isEqualTo(2);
    }
  }

  @Test
  void shouldGoOnWhereAProcessBeforeStopped() throws Exception {
    try (var first = new InboxDoor(broker)) {
      outcome(first.house.intake.put("test", encounter("V-1", "ward-a", "1")));
      broker.send(records(0, 10));
      await().atMost(PATIENCE).untilAsserted(() -> assertThat(kept()).hasSize(10));
    }
    broker.send(records(10, 20));

    try (var second = new InboxDoor(broker)) {
      await().atMost(PATIENCE).untilAsserted(() -> assertThat(kept()).hasSize(20));
      assertThat(second.count("driftward.inbox.read")).isEqualTo(10);
      assertThat(second.count("driftward.inbox.lost")).isZero();
    }
  }

  private static List<ProducerRecord<String, byte[]>> records(int from, int to) {
    return IntStream.range(from, to)
        .mapToObj(i -> heartRate("A-" + i, "V-1", 60 + i % 60))
        .toList();
  }

  private List<String> kept() {
    var format = JsonFormat.of(Assessment.class);
    return broker.read(Topic.ASSESSMENTS).stream()
        .map(ConsumerRecord::value)
        .map(value -> format.read(value).id())
        .toList();
  }
}
