package org.driftward.ingest.inbox;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.apache.kafka.clients.consumer.ConsumerGroupMetadata;
import org.apache.kafka.clients.consumer.OffsetAndMetadata;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.TopicPartition;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.kafka.RecordSender;

/**
 * Records and how far the inbox was read, committed together or not at all. A process that has lost
 * its partitions meanwhile is refused by the broker, by the group's metadata. After any failure
 * this is closed and another one opened. Used by one thread.
 */
final class Transactions implements AutoCloseable {

  private static final Duration LAST_WORDS = Duration.ofSeconds(5);

  private final Producer<String, byte[]> producer;

  /**
   * @param id of this process alone
   */
  Transactions(KafkaAccess access, IngestConfig config, String id) {
    var settings = new HashMap<>(RecordSender.settings(access, config.kafka()));
    settings.put(ProducerConfig.CLIENT_ID_CONFIG, id);
    settings.put(ProducerConfig.TRANSACTIONAL_ID_CONFIG, id);
    settings.put(
        ProducerConfig.TRANSACTION_TIMEOUT_CONFIG,
        Math.toIntExact(config.inbox().transactionTimeout().toMillis()));
    // Waiting for the coordinator is no waiting of a sender's.
    settings.put(ProducerConfig.MAX_BLOCK_MS_CONFIG, config.kafka().deliveryTimeout().toMillis());
    this.producer = new KafkaProducer<>(settings);
    try {
      producer.initTransactions();
    } catch (RuntimeException e) {
      producer.close(Duration.ZERO);
      throw e;
    }
  }

  /**
   * @throws KafkaException if nothing of it is committed, or it is not known whether
   */
  void commit(
      List<ProducerRecord<String, byte[]>> records,
      Map<TopicPartition, OffsetAndMetadata> read,
      ConsumerGroupMetadata group) {
    producer.beginTransaction();
    try {
      for (var one : records) {
        // A record that fails makes the commit fail.
        Objects.requireNonNull(producer.send(one));
      }
      producer.sendOffsetsToTransaction(read, group);
      producer.commitTransaction();
    } catch (RuntimeException e) {
      abort(e);
      throw e;
    }
  }

  /** At once, so that readers need not wait until the broker gives it up. */
  private void abort(RuntimeException failure) {
    try {
      producer.abortTransaction();
    } catch (RuntimeException e) {
      failure.addSuppressed(e);
    }
  }

  @Override
  public void close() {
    producer.close(LAST_WORDS);
  }
}
