package org.driftward.scoring.stream;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.WakeupException;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.part.Supervisor;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.scoring.edition.EditionFile;
import org.driftward.scoring.edition.EditionsInForce;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * The adopted editions, on a topic of one partition that keeps them for ever: every process that
 * scores reads them before it begins, and hears of further ones while it runs.
 */
public final class EditionTopic {

  public static final String TOPIC = "driftward.scoring-editions";
  public static final JsonFormat<EditionFile> FORMAT = JsonFormat.of(EditionFile.class);

  private static final Logger LOG = Logger.getLogger(EditionTopic.class);
  private static final TopicPartition PARTITION = new TopicPartition(TOPIC, 0);
  private static final Duration A_WHILE = Duration.ofMillis(500);

  private final Map<String, Object> settings;
  private final EditionsInForce editions;
  private @Nullable KafkaConsumer<byte[], byte[]> consumer;
  private @Nullable Thread follower;
  private volatile boolean deaf;

  EditionTopic(KafkaAccess access, EditionsInForce editions) {
    this.settings = new HashMap<>(access.settings());
    this.settings.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    this.settings.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    this.editions = editions;
  }

  /**
   * Reads what is there, then goes on listening in a thread of its own.
   *
   * @throws IllegalStateException if an adopted edition is broken
   */
  synchronized void follow() {
    var opened =
        new KafkaConsumer<>(settings, new ByteArrayDeserializer(), new ByteArrayDeserializer());
    consumer = opened;
    opened.assign(List.of(PARTITION));
    opened.seekToBeginning(List.of(PARTITION));
    long end = opened.endOffsets(List.of(PARTITION)).get(PARTITION);
    while (opened.position(PARTITION) < end) {
      take(opened);
    }
    var thread = new Thread(() -> goOn(opened), "scoring-editions");
    thread.setDaemon(true);
    thread.start();
    follower = thread;
  }

  /** Whether further editions would not be heard of; only a restart helps. */
  boolean deaf() {
    return deaf;
  }

  synchronized void stop() throws InterruptedException {
    if (consumer != null && follower != null) {
      consumer.wakeup();
      follower.join(A_WHILE.multipliedBy(4).toMillis());
      consumer = null;
      follower = null;
    }
  }

  private void goOn(KafkaConsumer<byte[], byte[]> opened) {
    try (opened) {
      while (true) {
        take(opened);
      }
    } catch (WakeupException e) {
      LOG.debug("No longer listening for editions");
    } catch (RuntimeException | Error e) {
      deaf = true;
      Supervisor.OF_THE_PROCESS.failed("scoring-editions", e);
      LOG.error("Editions are not heard of any more; restart this process", e);
    }
  }

  private void take(KafkaConsumer<byte[], byte[]> opened) {
    for (var adopted : opened.poll(A_WHILE)) {
      editions.adopt(FORMAT.read(adopted.value()));
      LOG.infof("An edition of the scoring policy is adopted: offset=%d", adopted.offset());
    }
  }
}
