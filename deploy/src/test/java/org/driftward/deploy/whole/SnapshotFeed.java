package org.driftward.deploy.whole;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;

/**
 * Stands in for scoring where only alerts is asked: writes what scoring would have written of
 * patients of whom each falls ill once.
 */
final class SnapshotFeed implements AutoCloseable {

  private static final JsonFormat<Snapshot> JSON = JsonFormat.of(Snapshot.class);
  private static final long BETWEEN_MILLIS = 1_000;
  private static final int PATIENCE_MILLIS = 180_000;

  private final KafkaProducer<String, byte[]> producer;
  private final Thread trickle = new Thread(this::trickle, "snapshot-feed");
  private final Map<String, Future<?>> episodes = new LinkedHashMap<>();
  private final ExecutorService sender = Executors.newSingleThreadExecutor();
  private volatile boolean ending;

  SnapshotFeed(Outside outside) {
    var settings = new HashMap<>(outside.kafka());
    settings.put(ProducerConfig.ACKS_CONFIG, "all");
    settings.put(ProducerConfig.DELIVERY_TIMEOUT_MS_CONFIG, PATIENCE_MILLIS);
    settings.put(ProducerConfig.MAX_BLOCK_MS_CONFIG, (long) PATIENCE_MILLIS);
    this.producer =
        new KafkaProducer<>(settings, new StringSerializer(), new ByteArraySerializer());
  }

  /** From now on one patient after the other falls ill. */
  void begin() {
    trickle.start();
  }

  private void trickle() {
    try {
      while (!ending) {
        ill();
        Thread.sleep(BETWEEN_MILLIS);
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  /**
   * No more of it. Returns when the broker has acknowledged everything.
   *
   * @return the episodes that there must be
   */
  List<String> end() throws InterruptedException, ExecutionException {
    ending = true;
    trickle.join();
    for (var sent : episodes.values()) {
      sent.get();
    }
    return List.copyOf(episodes.keySet());
  }

  /**
   * One more patient falls ill: a complete NEWS2 of 8, just taken. Returns at once; it is sent in
   * the background, for as long as that takes.
   *
   * @return the episode that there must be
   */
  synchronized String ill() {
    var encounter = "V-" + (episodes.size() + 1);
    var episode = "E-" + encounter + "-1";
    var picture = JSON.write(snapshot(encounter, Instant.now()));
    var message = new ProducerRecord<>(Topic.SNAPSHOTS.topic(), encounter, picture);
    episodes.put(episode, sender.submit(() -> producer.send(message).get()));
    return episode;
  }

  private static Snapshot snapshot(String encounter, Instant now) {
    var eight = BigDecimal.valueOf(8);
    var score =
        new Score(
            "news2", "NEWS2", "1", eight, eight, true, "high", "high", 0, null, List.of(),
            List.of());
    return new Snapshot(
        encounter,
        now,
        "A-" + encounter,
        1,
        true,
        false,
        "test",
        0,
        List.of(score),
        List.of(),
        List.of(),
        List.of(),
        now,
        List.of(),
        now.plus(Duration.ofHours(4)),
        Duration.ofHours(4),
        "by score",
        null);
  }

  @Override
  public void close() {
    ending = true;
    trickle.interrupt();
    sender.shutdownNow();
    producer.close(Duration.ofSeconds(5));
  }
}
