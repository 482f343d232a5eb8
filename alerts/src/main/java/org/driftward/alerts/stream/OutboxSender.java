package org.driftward.alerts.stream;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.Producer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.store.Bell;
import org.driftward.alerts.store.Outbox;
import org.driftward.alerts.store.Outbox.Message;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ground.part.Worker;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.jspecify.annotations.Nullable;

/**
 * Sends what the journal has kept to Kafka, in order and at least once. A reader knows a repetition
 * by its sequence.
 */
@Singleton
public class OutboxSender implements RolePart, Worker.Round {

  private final KafkaAccess access;
  private final Outbox outbox;
  private final AlertsConfig config;
  private final Worker work;
  private final Counter sent;
  private @Nullable Producer<String, String> producer;

  public OutboxSender(
      KafkaAccess access, Outbox outbox, Bell bell, AlertsConfig config, MeterRegistry registry) {
    this.access = access;
    this.outbox = outbox;
    this.config = config;
    this.work = new Worker(name(), config.longestBackOff(), this);
    bell.listen(work::ring);
    this.sent =
        Counter.builder("driftward.outbox.sent")
            .description("Changes of episodes and care plans that Kafka acknowledged")
            .register(registry);
  }

  @Override
  public Duration run() {
    int messages = outbox.send(config.outboxBatch(), this::send);
    sent.increment(messages);
    return messages < config.outboxBatch() ? config.outbox() : Duration.ZERO;
  }

  private void send(List<Message> messages) {
    var open = open();
    var acknowledgements = new ArrayList<Future<RecordMetadata>>(messages.size());
    try {
      for (var message : messages) {
        acknowledgements.add(
            open.send(new ProducerRecord<>(message.topic(), message.key(), message.payload())));
      }
      open.flush();
      for (var acknowledgement : acknowledgements) {
        acknowledgement.get();
      }
    } catch (ExecutionException e) {
      leave();
      throw new KafkaException("Kafka did not acknowledge a change", e.getCause());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new KafkaException("interrupted while Kafka had not acknowledged", e);
    }
  }

  private Producer<String, String> open() {
    var open = producer;
    if (open == null) {
      open = new KafkaProducer<>(settings());
      producer = open;
    }
    return open;
  }

  @Override
  public void leave() {
    var open = producer;
    producer = null;
    if (open != null) {
      open.close(config.longestBackOff());
    }
  }

  private Map<String, Object> settings() {
    var settings = new HashMap<String, Object>(access.settings());
    settings.put(ProducerConfig.CLIENT_ID_CONFIG, "driftward-alerts-outbox");
    settings.put(ProducerConfig.KEY_SERIALIZER_CLASS_CONFIG, StringSerializer.class);
    settings.put(ProducerConfig.VALUE_SERIALIZER_CLASS_CONFIG, StringSerializer.class);
    settings.put(ProducerConfig.ACKS_CONFIG, "all");
    settings.put(ProducerConfig.ENABLE_IDEMPOTENCE_CONFIG, true);
    settings.put(ProducerConfig.COMPRESSION_TYPE_CONFIG, "lz4");
    settings.put(ProducerConfig.MAX_BLOCK_MS_CONFIG, 5_000);
    settings.put(ProducerConfig.REQUEST_TIMEOUT_MS_CONFIG, 5_000);
    settings.put(ProducerConfig.DELIVERY_TIMEOUT_MS_CONFIG, 10_000);
    return settings;
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public String name() {
    return "alerts-outbox";
  }

  @Override
  public void start() {
    work.start();
  }

  @Override
  public void stop() {
    work.stop();
  }

  @Override
  public Condition condition() {
    return work.condition();
  }
}
