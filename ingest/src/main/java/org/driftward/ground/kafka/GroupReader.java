package org.driftward.ground.kafka;

import java.time.Duration;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.ConsumerRebalanceListener;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ground.part.Worker;
import org.jspecify.annotations.Nullable;

/**
 * One thread that reads topics as a member of a group. Offsets are committed after the batch has
 * been kept, so a record may come twice and is never left out. A batch that cannot be kept is read
 * again, and the place in the group is not given up; where Kafka fails, the consumer is thrown away
 * and the next one begins at the last commit.
 */
public final class GroupReader implements Worker.Round {

  private static final Duration POLL = Duration.ofMillis(250);

  /** A consumer that polls an absent broker gets nothing and no error; its heartbeat tells. */
  private static final Duration HEARTBEAT_LOST = Duration.ofSeconds(15);

  /** What becomes of the records. Called in the reader's thread. */
  @FunctionalInterface
  public interface Keeper {

    /** Returns once everything is kept. The same record may come again. */
    void keep(ConsumerRecords<String, byte[]> records);

    /** These partitions are read now; whoever knows better than the group where to, seeks. */
    default void assigned(
        Consumer<String, byte[]> consumer, Collection<TopicPartition> partitions) {}

    /** After every poll, even an empty one. */
    default void polled(Consumer<String, byte[]> consumer) {}
  }

  private final Map<String, Object> settings;
  private final List<String> topics;
  private final Keeper keeper;
  private final Worker worker;
  private @Nullable Consumer<String, byte[]> consumer;

  /**
   * @param name of the thread and the client
   * @param most records in one batch
   * @param settings of the consumer besides, which come first
   * @param longestPause between attempts that fail
   */
  public GroupReader(
      String name,
      String group,
      KafkaAccess access,
      List<String> topics,
      int most,
      Map<String, Object> settings,
      Duration longestPause,
      Keeper keeper) {
    this.settings = settings(name, group, access, most);
    this.settings.putAll(settings);
    this.topics = List.copyOf(topics);
    this.keeper = keeper;
    this.worker = new Worker(name, longestPause, this);
  }

  private static Map<String, Object> settings(
      String name, String group, KafkaAccess access, int most) {
    var all = new HashMap<String, Object>(access.settings());
    all.put(ConsumerConfig.CLIENT_ID_CONFIG, name);
    all.put(ConsumerConfig.GROUP_ID_CONFIG, group);
    all.put(ConsumerConfig.KEY_DESERIALIZER_CLASS_CONFIG, StringDeserializer.class);
    all.put(ConsumerConfig.VALUE_DESERIALIZER_CLASS_CONFIG, ByteArrayDeserializer.class);
    all.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    all.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    all.put(ConsumerConfig.ALLOW_AUTO_CREATE_TOPICS_CONFIG, false);
    all.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
    all.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, most);
    return all;
  }

  public void start() {
    worker.start();
  }

  public void stop() {
    worker.stop();
  }

  public Condition condition() {
    return worker.condition();
  }

  @Override
  public Duration run() {
    try {
      var open = open();
      var records = open.poll(POLL);
      if (!records.isEmpty()) {
        keep(open, records);
        open.commitSync();
      }
      keeper.polled(open);
      if (heartbeatAge(open) > HEARTBEAT_LOST.toSeconds()) {
        worker.say(Condition.ill("Kafka does not answer"));
      }
      return Duration.ZERO;
    } catch (KafkaException | IllegalStateException e) {
      leave();
      throw e;
    }
  }

  private void keep(Consumer<String, byte[]> open, ConsumerRecords<String, byte[]> records) {
    try {
      keeper.keep(records);
    } catch (Throwable e) {
      for (var partition : records.partitions()) {
        open.seek(partition, records.records(partition).get(0).offset());
      }
      keeper.assigned(open, records.partitions());
      throw e;
    }
  }

  private Consumer<String, byte[]> open() {
    var open = consumer;
    if (open == null) {
      open = new KafkaConsumer<>(settings);
      consumer = open;
      open.subscribe(topics, new Assignment(open));
    }
    return open;
  }

  @Override
  public void leave() {
    var open = consumer;
    consumer = null;
    if (open != null) {
      open.close();
    }
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

  private final class Assignment implements ConsumerRebalanceListener {
    private final Consumer<String, byte[]> open;

    Assignment(Consumer<String, byte[]> open) {
      this.open = open;
    }

    @Override
    public void onPartitionsAssigned(Collection<TopicPartition> partitions) {
      keeper.assigned(open, partitions);
    }

    @Override
    public void onPartitionsRevoked(Collection<TopicPartition> partitions) {
      // What was read is kept before the next poll; nothing is in hand.
    }
  }
}
