package org.driftward.scoring.rescore;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.Topic;

/** Reads topics from their first record to what was their last when asked. In no group. */
final class LogReader implements AutoCloseable {

  private static final Duration A_WHILE = Duration.ofMillis(500);

  private final KafkaConsumer<String, byte[]> consumer;

  LogReader(KafkaAccess access) {
    Map<String, Object> settings = new HashMap<>(access.settings());
    settings.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    settings.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    settings.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
    settings.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, 5_000);
    this.consumer =
        new KafkaConsumer<>(settings, new StringDeserializer(), new ByteArrayDeserializer());
  }

  /** What to do with each record. */
  @FunctionalInterface
  interface Each {
    void take(ConsumerRecord<String, byte[]> received) throws InterruptedException;
  }

  int partitions(Topic topic) {
    return consumer.partitionsFor(topic.topic()).size();
  }

  void read(Topic topic, int partition, Each each) throws InterruptedException {
    var at = new TopicPartition(topic.topic(), partition);
    consumer.assign(List.of(at));
    consumer.seekToBeginning(List.of(at));
    long end = consumer.endOffsets(List.of(at)).get(at);
    while (consumer.position(at) < end) {
      for (var received : consumer.poll(A_WHILE)) {
        each.take(received);
      }
    }
  }

  @Override
  public void close() {
    consumer.close();
  }
}
