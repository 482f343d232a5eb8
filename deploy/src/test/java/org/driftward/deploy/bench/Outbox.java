package org.driftward.deploy.bench;

import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicReference;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ground.kafka.KafkaAccess;
import org.jspecify.annotations.Nullable;

/** A bare producer that batches much. A record that is lost shows at the next flush. */
final class Outbox implements AutoCloseable {

  private final KafkaProducer<String, byte[]> producer;
  private final AtomicReference<@Nullable Exception> failure = new AtomicReference<>();

  Outbox(KafkaAccess access) {
    Map<String, Object> settings = new HashMap<>(access.settings());
    settings.put("compression.type", "lz4");
    settings.put("linger.ms", 20);
    settings.put("batch.size", 1 << 17);
    this.producer =
        new KafkaProducer<>(settings, new StringSerializer(), new ByteArraySerializer());
  }

  void send(String topic, String key, byte[] value) {
    var unused =
        producer.send(
            new ProducerRecord<>(topic, key, value),
            (metadata, exception) -> {
              if (exception != null) {
                failure.compareAndSet(null, exception);
              }
            });
  }

  /**
   * Returns once everything is acknowledged.
   *
   * @throws IllegalStateException if something was lost
   */
  void flush() {
    producer.flush();
    var lost = failure.get();
    if (lost != null) {
      throw new IllegalStateException("records were lost", lost);
    }
  }

  @Override
  public void close() {
    try (producer) {
      flush();
    }
  }
}
