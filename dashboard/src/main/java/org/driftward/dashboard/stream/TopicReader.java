package org.driftward.dashboard.stream;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.CooperativeStickyAssignor;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.errors.WakeupException;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.driftward.ingest.contract.KafkaAccess;
import org.driftward.ingest.contract.RolePart.Condition;
import org.driftward.ingest.contract.Topic;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * One thread that reads the topics into the read model. Offsets are committed after the database
 * has committed, so a record may be read twice and is never left out; reading it twice changes
 * nothing. On any failure the consumer is thrown away and a new one starts at the last commit.
 */
final class TopicReader implements Runnable {

  static final String GROUP = "driftward-dashboard";

  private static final Logger LOG = Logger.getLogger(TopicReader.class);
  private static final Duration POLL = Duration.ofSeconds(1);
  private static final Duration FIRST_PAUSE = Duration.ofMillis(200);
  private static final Duration LONGEST_PAUSE = Duration.ofSeconds(15);

  /** A consumer that polls an absent broker gets nothing and no error; its heartbeat tells. */
  private static final Duration HEARTBEAT_LOST = Duration.ofSeconds(15);

  private final String name;
  private final Map<String, Object> settings;
  private final BatchKeeper keeper;
  private final BoardMetrics metrics;
  private final CountDownLatch stopping = new CountDownLatch(1);
  private volatile @Nullable Consumer<String, byte[]> current;
  private volatile Condition condition = Condition.ill("not started");

  TopicReader(
      String name, KafkaAccess access, int batch, BatchKeeper keeper, BoardMetrics metrics) {
    this.name = name;
    this.settings = settings(name, access, batch);
    this.keeper = keeper;
    this.metrics = metrics;
  }

  private static Map<String, Object> settings(String name, KafkaAccess access, int batch) {
    var settings = new HashMap<String, Object>(access.settings());
    settings.put(ConsumerConfig.GROUP_ID_CONFIG, GROUP);
    settings.put(ConsumerConfig.CLIENT_ID_CONFIG, name);
    settings.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    settings.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    settings.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
    settings.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, batch);
    settings.put(ConsumerConfig.ALLOW_AUTO_CREATE_TOPICS_CONFIG, false);
    settings.put(
        ConsumerConfig.PARTITION_ASSIGNMENT_STRATEGY_CONFIG,
        CooperativeStickyAssignor.class.getName());
    return settings;
  }

  @Override
  public void run() {
    var pause = FIRST_PAUSE;
    while (!stopped(Duration.ZERO)) {
      try (var consumer =
          new KafkaConsumer<>(settings, new StringDeserializer(), new ByteArrayDeserializer())) {
        current = consumer;
        consumer.subscribe(RecordReader.TOPICS.stream().map(Topic::topic).toList());
        while (!stopped(Duration.ZERO)) {
          step(consumer);
          pause = FIRST_PAUSE;
        }
      } catch (WakeupException e) {
        LOG.debugf("Reader %s was woken to stop", name);
      } catch (RuntimeException e) {
        condition = Condition.ill("reading or keeping failed, will try again");
        LOG.warnf("Reader %s failed and starts again: %s", name, e.getClass().getName());
        if (stopped(pause)) {
          break;
        }
        pause =
            pause.multipliedBy(2).compareTo(LONGEST_PAUSE) < 0
                ? pause.multipliedBy(2)
                : LONGEST_PAUSE;
      } finally {
        current = null;
        metrics.gone(name);
      }
    }
    condition = Condition.ill("stopped");
  }

  private void step(Consumer<String, byte[]> consumer) {
    var records = consumer.poll(POLL);
    if (!records.isEmpty()) {
      keeper.keep(records);
      consumer.commitSync();
    }
    long lag = 0;
    for (var partition : consumer.assignment()) {
      lag += consumer.currentLag(partition).orElse(0);
    }
    metrics.lag(name, lag);
    condition =
        heartbeatAge(consumer) > HEARTBEAT_LOST.toSeconds()
            ? Condition.ill("Kafka does not answer")
            : Condition.ok();
  }

  /** Seconds since Kafka last answered, or a negative number before the first answer. */
  private static double heartbeatAge(Consumer<String, byte[]> consumer) {
    for (var metric : consumer.metrics().entrySet()) {
      if (metric.getKey().name().equals("last-heartbeat-seconds-ago")
          && metric.getValue().metricValue() instanceof Number age) {
        return age.doubleValue();
      }
    }
    return -1;
  }

  private boolean stopped(Duration within) {
    try {
      return stopping.await(within.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return true;
    }
  }

  /** Asks the thread to end after what it has in hand. From any thread. */
  void stop() {
    stopping.countDown();
    var consumer = current;
    if (consumer != null) {
      consumer.wakeup();
    }
  }

  Condition condition() {
    return condition;
  }
}
