package org.driftward.ingest.inbox;

import java.time.Duration;
import java.util.Collection;
import java.util.HashMap;
import java.util.Map;
import java.util.Set;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.ConsumerGroupMetadata;
import org.apache.kafka.clients.consumer.ConsumerRebalanceListener;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.Topic;
import org.jboss.logging.Logger;

/**
 * This process's share of the inbox, from where it was committed. Used by one thread, but for
 * {@link #wake()}.
 */
final class InboxReader implements AutoCloseable {

  private static final Logger LOG = Logger.getLogger(InboxReader.class);
  private static final String GROUP = "driftward-inbox";
  private static final Duration ANSWER = Duration.ofSeconds(5);

  /** A process that died is missed after so long. */
  private static final int SESSION_MILLIS = 10_000;

  /** Bounds what is in memory at once, however far behind it is. */
  private static final int FETCHED_BYTES = 16 << 20;

  private final Consumer<String, byte[]> consumer;
  private final InboxMetrics metrics;

  InboxReader(KafkaAccess access, int batch, InboxMetrics metrics) {
    this.metrics = metrics;
    this.consumer =
        new KafkaConsumer<>(
            settings(access, batch), new StringDeserializer(), new ByteArrayDeserializer());
    consumer.subscribe(Set.of(Topic.INBOX.topic()), new Missed());
  }

  private static Map<String, Object> settings(KafkaAccess access, int batch) {
    var settings = new HashMap<String, Object>(access.settings());
    settings.put(ConsumerConfig.GROUP_ID_CONFIG, GROUP);
    settings.put(ConsumerConfig.CLIENT_ID_CONFIG, GROUP);
    settings.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    settings.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    // A sender may write in transactions of its own.
    settings.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
    settings.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, batch);
    settings.put(ConsumerConfig.FETCH_MAX_BYTES_CONFIG, FETCHED_BYTES);
    settings.put(ConsumerConfig.ALLOW_AUTO_CREATE_TOPICS_CONFIG, false);
    settings.putIfAbsent(ConsumerConfig.SESSION_TIMEOUT_MS_CONFIG, SESSION_MILLIS);
    return settings;
  }

  ConsumerRecords<String, byte[]> poll(Duration patience) {
    return consumer.poll(patience);
  }

  /** Where to go on once these are dealt with. */
  static Map<TopicPartition, OffsetAndMetadata> behind(ConsumerRecords<String, byte[]> records) {
    return records.nextOffsets();
  }

  ConsumerGroupMetadata group() {
    return consumer.groupMetadata();
  }

  /** Goes back before these records and reads nothing more, staying in the group. */
  void pauseBefore(ConsumerRecords<String, byte[]> records) {
    for (var partition : records.partitions()) {
      if (consumer.assignment().contains(partition)) {
        consumer.seek(partition, records.records(partition).get(0).offset());
      }
    }
    pause();
  }

  /** Partitions that were given to us during a pause are paused, too. */
  void pause() {
    consumer.pause(consumer.assignment());
  }

  void resume() {
    consumer.resume(consumer.assignment());
  }

  /** Records between here and the end; what is not known now is told at the next call. */
  void measure() {
    try {
      long behind = 0;
      for (var end : consumer.endOffsets(consumer.assignment(), ANSWER).entrySet()) {
        behind += Math.max(0, end.getValue() - consumer.position(end.getKey(), ANSWER));
      }
      metrics.lag(behind);
    } catch (org.apache.kafka.common.errors.TimeoutException e) {
      LOG.debug("The lag of the inbox is not known now");
    }
  }

  /** May be called by any thread. */
  void wake() {
    consumer.wakeup();
  }

  @Override
  public void close() {
    consumer.close();
  }

  /** Says so where the broker has forgotten what was not read yet. */
  private final class Missed implements ConsumerRebalanceListener {

    @Override
    public void onPartitionsAssigned(Collection<TopicPartition> partitions) {
      var begins = consumer.beginningOffsets(partitions, ANSWER);
      consumer
          .committed(Set.copyOf(partitions), ANSWER)
          .forEach(
              (partition, read) -> {
                long missed = read == null ? 0 : begins.get(partition) - read.offset();
                if (missed > 0) {
                  metrics.lost(missed);
                  LOG.errorf(
                      "The broker has forgotten %d records of the inbox before they were read:"
                          + " partition %d",
                      missed, partition.partition());
                }
              });
    }

    @Override
    public void onPartitionsRevoked(Collection<TopicPartition> partitions) {
      // What was read is committed before the next poll; nothing is in hand.
    }
  }
}
