package org.driftward.ingest.inbox;

import static java.nio.charset.StandardCharsets.UTF_8;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.time.Duration;
import java.util.List;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.core.AssessmentReader;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.kafka.House;
import org.driftward.ingest.kafka.IntakeMetrics;
import org.driftward.ingest.web.AssessmentGate;
import org.driftward.testing.Broker;

/** One process that reads the inbox of a broker, with the gate for JSON. */
final class InboxDoor implements AutoCloseable {

  final SimpleMeterRegistry meters = new SimpleMeterRegistry();
  final House house;
  final InboxPart part;

  InboxDoor(Broker broker) {
    this.house = new House(broker.access(), Duration.ofSeconds(3));
    var reader =
        new AssessmentReader(new IntakeLimits(Duration.ofMinutes(5), Duration.ofHours(24), 1000));
    List<Gate> gates =
        List.of(
            new AssessmentGate(house.intake, house.directory, reader, house.rules, house.clock));
    this.part =
        new InboxPart(
            broker.access(),
            house.config,
            house.intake,
            house.directory,
            house.rules,
            gates,
            new IntakeMetrics(meters),
            new InboxMetrics(meters),
            house.clock);
    part.start();
  }

  static ProducerRecord<String, byte[]> heartRate(String id, String encounter, int value) {
    var json =
        """
        {"id": "%s", "encounter": "%s", "patient": "P-%s", "takenAt": "2026-01-05T11:50:00Z",
         "source": "monitor", "by": "m-1",
         "findings": [{"code": "heart-rate", "value": %d, "unit": "/min"}]}"""
            .formatted(id, encounter, encounter, value);
    return new ProducerRecord<>(Topic.INBOX.topic(), encounter, json.getBytes(UTF_8));
  }

  double gauge(String name) {
    return meters.get(name).gauge().value();
  }

  double count(String name) {
    return meters.get(name).counter().count();
  }

  @Override
  public void close() {
    part.stop();
    house.close();
  }
}
