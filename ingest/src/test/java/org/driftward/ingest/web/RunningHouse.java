package org.driftward.ingest.web;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.ZoneOffset;
import org.driftward.ingest.contract.KafkaAccess;
import org.driftward.ingest.kafka.KafkaEncounterDirectory;
import org.driftward.ingest.kafka.KafkaIntake;
import org.driftward.testing.Broker;

/** What the composition in deploy provides: a broker, a clock, and parts that are started. */
@Singleton
public class RunningHouse {

  static final java.time.Instant NOW = java.time.Instant.parse("2026-01-05T12:00:00Z");

  private final Broker broker = Broker.start();

  @Produces
  @Singleton
  KafkaAccess access() {
    return broker.access();
  }

  @Produces
  @Singleton
  Clock clock() {
    return Clock.fixed(NOW, ZoneOffset.UTC);
  }

  @Produces
  @Singleton
  Broker broker() {
    return broker;
  }

  void start(@Observes StartupEvent event, KafkaEncounterDirectory directory, KafkaIntake intake) {
    directory.start();
    intake.start();
  }

  void stop(@Observes ShutdownEvent event, KafkaEncounterDirectory directory, KafkaIntake intake) {
    intake.stop();
    directory.stop();
    broker.close();
  }
}
