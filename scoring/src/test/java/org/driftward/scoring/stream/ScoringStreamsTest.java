package org.driftward.scoring.stream;

import static org.assertj.core.api.Assertions.assertThat;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Fixtures;
import org.driftward.scoring.core.timeline.Listener;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The topology on a real broker, exactly once. */
class ScoringStreamsTest {

  private static final Duration PATIENCE = Duration.ofMinutes(2);
  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);
  private static final JsonFormat<Snapshot> SNAPSHOT = JsonFormat.of(Snapshot.class);

  @TempDir Path folder;

  @Test
  void shouldWaitForTopicsScoreAndGoOnAfterARestart() throws Exception {
    try (var broker = RealBroker.start(folder.resolve("broker"))) {
      var first = streams(broker);
      first.start();
      assertThat(first.condition().well()).isFalse();
      broker.makeTopics(3);
      send(broker, 0, 20);
      await(() -> snapshots(broker).size() == 20);
      assertThat(first.condition().well()).isTrue();
      first.stop();
      assertThat(first.condition().well()).isFalse();

      send(broker, 20, 40);
      var second = streams(broker);
      second.start();
      await(() -> snapshots(broker).size() >= 40);
      second.stop();

      var sent = snapshots(broker);
      var listener = new Listener();
      sent.forEach(listener::hear);
      assertThat(sent).hasSize(40).extracting(Snapshot::assessment).doesNotHaveDuplicates();
      assertThat(listener.known()).containsOnlyKeys("V-0", "V-1", "V-2", "V-3");
    }
  }

  private ScoringStreams streams(RealBroker broker) {
    return new ScoringStreams(
        broker.access(),
        new TestSettings(folder.resolve("scoring")),
        Fixtures.editions(),
        Fixtures.CATALOGUE,
        new SimpleMeterRegistry());
  }

  /** One assessment an hour of four encounters in turn. */
  private static void send(RealBroker broker, int from, int until) throws Exception {
    var settings = new HashMap<String, Object>(broker.access().settings());
    try (var producer =
        new KafkaProducer<>(settings, new StringSerializer(), new ByteArraySerializer())) {
      for (int i = from; i < until; i++) {
        var assessment = Given.set("A-" + i).in("V-" + i % 4).at(i).made();
        producer
            .send(
                new ProducerRecord<>(
                    Topic.ASSESSMENTS.topic(),
                    assessment.encounter(),
                    ASSESSMENT.write(assessment)))
            .get();
      }
    }
  }

  /** Every committed snapshot, oldest first in its partition. */
  private static List<Snapshot> snapshots(RealBroker broker) {
    Map<String, Object> settings = new HashMap<>(broker.access().settings());
    settings.put("isolation.level", "read_committed");
    settings.put("auto.offset.reset", "earliest");
    try (var consumer =
        new KafkaConsumer<>(settings, new StringDeserializer(), new ByteArrayDeserializer())) {
      var partitions =
          consumer.partitionsFor(Topic.SNAPSHOTS.topic()).stream()
              .map(info -> new TopicPartition(info.topic(), info.partition()))
              .toList();
      consumer.assign(partitions);
      consumer.seekToBeginning(partitions);
      var ends = consumer.endOffsets(partitions);
      var sent = new ArrayList<Snapshot>();
      while (partitions.stream().anyMatch(at -> consumer.position(at) < ends.get(at))) {
        consumer
            .poll(Duration.ofMillis(200))
            .forEach(record -> sent.add(SNAPSHOT.read(record.value())));
      }
      return sent;
    }
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
