package org.driftward.scoring.stream;

import static org.assertj.core.api.Assertions.assertThat;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.stream.IntStream;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Fixtures;
import org.driftward.scoring.core.timeline.Listener;
import org.driftward.testing.Broker;
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
    try (var broker = Broker.startBare()) {
      var first = streams(broker);
      first.start();
      assertThat(first.condition().well()).isFalse();
      broker.createTopics(3);
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

  private ScoringStreams streams(Broker broker) {
    return new ScoringStreams(
        broker.access(),
        new TestSettings(folder.resolve("scoring")),
        Fixtures.timeline(),
        Fixtures.CATALOGUE,
        new SimpleMeterRegistry());
  }

  /** One assessment an hour of four encounters in turn. */
  private static void send(Broker broker, int from, int until) {
    broker.send(
        IntStream.range(from, until)
            .mapToObj(i -> Given.set("A-" + i).in("V-" + i % 4).at(i).made())
            .map(
                set ->
                    new ProducerRecord<>(
                        Topic.ASSESSMENTS.topic(), set.encounter(), ASSESSMENT.write(set)))
            .toList());
  }

  private static List<Snapshot> snapshots(Broker broker) {
    return broker.read(Topic.SNAPSHOTS).stream()
        .map(record -> SNAPSHOT.read(record.value()))
        .toList();
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
