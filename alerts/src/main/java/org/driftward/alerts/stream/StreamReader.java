package org.driftward.alerts.stream;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.Consumer;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.consumer.RangeAssignor;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.errors.InterruptException;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.work.Repeating;
import org.driftward.ingest.contract.KafkaAccess;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.contract.Topic;
import org.jspecify.annotations.Nullable;

/**
 * Follows snapshots and bed moves together: both topics have the same partitions, so one process
 * sees both of an encounter.
 */
@Singleton
public class StreamReader implements RolePart {

  private static final Duration POLL = Duration.ofMillis(200);

  private final KafkaAccess access;
  private final StreamIntake intake;
  private final AlertsConfig config;
  private final Repeating work;
  private final Counter read;
  private @Nullable Consumer<String, byte[]> consumer;

  public StreamReader(
      KafkaAccess access, StreamIntake intake, AlertsConfig config, MeterRegistry registry) {
    this.access = access;
    this.intake = intake;
    this.config = config;
    this.work = new Repeating(name(), config.longestBackOff(), this::round);
    this.read =
        Counter.builder("driftward.alerts.read")
            .description("Snapshots and bed moves that alerts has taken")
            .register(registry);
  }

  private void round() throws InterruptedException {
    try {
      var open = open();
      var records = open.poll(POLL);
      if (!records.isEmpty()) {
        take(open, records);
        open.commitSync();
        read.increment(records.count());
      }
    } catch (InterruptException e) {
      throw stopped(e);
    } catch (KafkaException | IllegalStateException e) {
      // Whoever opens next begins where the last commit left off.
      close();
      throw e;
    }
    if (Thread.interrupted()) {
      throw new InterruptedException();
    }
  }

  /** What the database could not keep is read again, and the place in the group is not given up. */
  private void take(Consumer<String, byte[]> open, ConsumerRecords<String, byte[]> records) {
    try {
      intake.take(list(records));
    } catch (RuntimeException e) {
      for (var partition : records.partitions()) {
        open.seek(partition, records.records(partition).get(0).offset());
      }
      throw e;
    }
  }

  private static InterruptedException stopped(KafkaException cause) {
    Thread.interrupted();
    var stop = new InterruptedException();
    stop.initCause(cause);
    return stop;
  }

  private static List<ConsumerRecord<String, byte[]>> list(
      ConsumerRecords<String, byte[]> records) {
    var list = new ArrayList<ConsumerRecord<String, byte[]>>(records.count());
    records.forEach(list::add);
    return list;
  }

  private Consumer<String, byte[]> open() {
    var open = consumer;
    if (open == null) {
      open = new KafkaConsumer<>(settings());
      open.subscribe(List.of(Topic.ENCOUNTERS.topic(), Topic.SNAPSHOTS.topic()));
      consumer = open;
    }
    return open;
  }

  private void close() {
    var open = consumer;
    consumer = null;
    if (open != null) {
      open.close();
    }
  }

  private Map<String, Object> settings() {
    var settings = new HashMap<String, Object>(access.settings());
    settings.put(ConsumerConfig.CLIENT_ID_CONFIG, "driftward-alerts");
    settings.put(ConsumerConfig.GROUP_ID_CONFIG, "driftward-alerts");
    settings.put(ConsumerConfig.KEY_DESERIALIZER_CLASS_CONFIG, StringDeserializer.class);
    settings.put(ConsumerConfig.VALUE_DESERIALIZER_CLASS_CONFIG, ByteArrayDeserializer.class);
    settings.put(
        ConsumerConfig.PARTITION_ASSIGNMENT_STRATEGY_CONFIG, RangeAssignor.class.getName());
    settings.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    settings.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    settings.put(ConsumerConfig.ALLOW_AUTO_CREATE_TOPICS_CONFIG, false);
    settings.put(ConsumerConfig.ISOLATION_LEVEL_CONFIG, "read_committed");
    settings.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, config.batch());
    settings.putIfAbsent(ConsumerConfig.SESSION_TIMEOUT_MS_CONFIG, 10_000);
    return settings;
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public String name() {
    return "alerts-reader";
  }

  @Override
  public void start() {
    work.start();
  }

  @Override
  public void stop() {
    work.stop();
    close();
  }

  @Override
  public Condition condition() {
    return work.condition();
  }
}
