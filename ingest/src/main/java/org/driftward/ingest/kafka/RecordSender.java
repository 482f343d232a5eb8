package org.driftward.ingest.kafka;

import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.header.Header;
import org.apache.kafka.common.header.internals.RecordHeader;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Topic;
import org.jspecify.annotations.Nullable;

/**
 * One idempotent producer that waits for every replica in sync. Thread-safe.
 *
 * <p>Kafka's own record time stays the wall clock of the producer, because a broker refuses records
 * from the future and a demonstration's clock runs ahead.
 */
public final class RecordSender implements AutoCloseable {

  private static final Duration LAST_WORDS = Duration.ofSeconds(5);

  private final Producer<String, byte[]> producer;

  RecordSender(KafkaAccess access, IngestConfig.Kafka config) {
    this.producer = new KafkaProducer<>(settings(access, config));
  }

  /** What every producer of intake needs; a further one adds to a map of its own. */
  public static Map<String, Object> settings(KafkaAccess access, IngestConfig.Kafka config) {
    var settings = new HashMap<String, Object>(access.settings());
    settings.put(ProducerConfig.CLIENT_ID_CONFIG, "driftward-intake");
    settings.put(ProducerConfig.KEY_SERIALIZER_CLASS_CONFIG, StringSerializer.class);
    settings.put(ProducerConfig.VALUE_SERIALIZER_CLASS_CONFIG, ByteArraySerializer.class);
    settings.put(ProducerConfig.ACKS_CONFIG, "all");
    settings.put(ProducerConfig.ENABLE_IDEMPOTENCE_CONFIG, true);
    settings.put(ProducerConfig.COMPRESSION_TYPE_CONFIG, "lz4");
    settings.put(ProducerConfig.LINGER_MS_CONFIG, millis(config.linger()));
    settings.put(ProducerConfig.MAX_BLOCK_MS_CONFIG, config.maxBlock().toMillis());
    settings.put(ProducerConfig.DELIVERY_TIMEOUT_MS_CONFIG, millis(config.deliveryTimeout()));
    settings.put(
        ProducerConfig.REQUEST_TIMEOUT_MS_CONFIG, millis(config.deliveryTimeout().dividedBy(2)));
    settings.put(ProducerConfig.BUFFER_MEMORY_CONFIG, config.buffer().asLongValue());
    settings.put(ProducerConfig.MAX_REQUEST_SIZE_CONFIG, Topic.REJECTED.largestRecord());
    return settings;
  }

  private static int millis(Duration duration) {
    return Math.toIntExact(duration.toMillis());
  }

  /** A record as every reader of the topics expects it. */
  static ProducerRecord<String, byte[]> letter(
      Topic topic, String key, byte[] value, Instant acceptedAt, String origin) {
    var stamp = Long.toString(acceptedAt.toEpochMilli()).getBytes(StandardCharsets.US_ASCII);
    List<Header> headers =
        List.of(
            new RecordHeader(RecordHeaders.ACCEPTED_AT, stamp),
            new RecordHeader(RecordHeaders.ORIGIN, origin.getBytes(StandardCharsets.UTF_8)));
    return new ProducerRecord<>(topic.topic(), null, key, value, headers);
  }

  /**
   * @return completes when Kafka has acknowledged the record, or exceptionally with {@link
   *     UnavailableException}
   */
  CompletableFuture<Void> send(ProducerRecord<String, byte[]> kafkaRecord) {
    var done = new CompletableFuture<Void>();
    try {
      var sent = producer.send(kafkaRecord, (metadata, failure) -> settle(done, failure));
      Objects.requireNonNull(sent);
    } catch (KafkaException | IllegalStateException e) {
      settle(done, e);
    }
    return done;
  }

  private static void settle(CompletableFuture<Void> done, @Nullable Exception failure) {
    if (failure == null) {
      done.complete(null);
    } else {
      done.completeExceptionally(
          new UnavailableException("Kafka did not acknowledge a record", failure));
    }
  }

  @Override
  public void close() {
    producer.close(LAST_WORDS);
  }
}
