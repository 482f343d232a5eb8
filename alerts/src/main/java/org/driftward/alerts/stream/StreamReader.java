package org.driftward.alerts.stream;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.ConsumerRecords;
import org.apache.kafka.clients.consumer.RangeAssignor;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.ground.kafka.GroupReader;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.contract.Topic;

/**
 * Follows snapshots and bed moves together: both topics have the same partitions, so one process
 * sees both of an encounter.
 */
@Singleton
public class StreamReader implements RolePart, GroupReader.Keeper {

  private static final String GROUP = "driftward-alerts";

  private final StreamIntake intake;
  private final GroupReader reader;
  private final Counter read;

  public StreamReader(
      KafkaAccess access, StreamIntake intake, AlertsConfig config, MeterRegistry registry) {
    this.intake = intake;
    this.reader =
        new GroupReader(
            GROUP,
            GROUP,
            access,
            List.of(Topic.ENCOUNTERS.topic(), Topic.SNAPSHOTS.topic()),
            config.batch(),
            settings(access),
            config.longestBackOff(),
            this);
    this.read =
        Counter.builder("driftward.alerts.read")
            .description("Snapshots and bed moves that alerts has taken")
            .register(registry);
  }

  private static Map<String, Object> settings(KafkaAccess access) {
    var settings = new HashMap<String, Object>();
    settings.put(
        ConsumerConfig.PARTITION_ASSIGNMENT_STRATEGY_CONFIG, RangeAssignor.class.getName());
    if (!access.settings().containsKey(ConsumerConfig.SESSION_TIMEOUT_MS_CONFIG)) {
      settings.put(ConsumerConfig.SESSION_TIMEOUT_MS_CONFIG, 10_000);
    }
    return settings;
  }

  @Override
  public void keep(ConsumerRecords<String, byte[]> records) {
    var batch = new ArrayList<ConsumerRecord<String, byte[]>>(records.count());
    records.forEach(batch::add);
    intake.take(batch);
    read.increment(batch.size());
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public String name() {
    return StreamIntake.PART;
  }

  @Override
  public void start() {
    reader.start();
  }

  @Override
  public void stop() {
    reader.stop();
  }

  @Override
  public Condition condition() {
    return reader.condition();
  }
}
