package org.driftward.ingest.web;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.ZoneOffset;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.RolePart;
import org.driftward.testing.Broker;

/** What the composition in deploy provides: a broker, a clock, and parts that are started. */
@Singleton
public class RunningHouse {

  public static final java.time.Instant NOW = java.time.Instant.parse("2026-01-05T12:00:00Z");

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

  void start(@Observes StartupEvent event, @Any Instance<RolePart> parts) {
    parts.forEach(RolePart::start);
  }

  void stop(@Observes ShutdownEvent event, @Any Instance<RolePart> parts) {
    parts.forEach(RolePart::stop);
    broker.close();
  }
}
