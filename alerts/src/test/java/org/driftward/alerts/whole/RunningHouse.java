package org.driftward.alerts.whole;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Any;
import jakarta.enterprise.inject.Instance;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Instant;
import java.util.stream.Stream;
import org.driftward.alerts.Accounts;
import org.driftward.alerts.TestClock;
import org.driftward.alerts.WrittenRecord;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.testing.Broker;

/** What the composition in deploy provides: a broker, a clock, and parts that are started. */
@Singleton
public class RunningHouse {

  static final Instant START = Instant.parse("2026-01-05T12:00:00Z");

  private final Broker broker = Broker.start();
  private final TestClock clock = new TestClock(START);
  private final Accounts accounts = new Accounts();
  private final WrittenRecord record = new WrittenRecord();

  @Produces
  @Singleton
  KafkaAccess access() {
    return broker.access();
  }

  @Produces
  @Singleton
  Clock clock() {
    return clock;
  }

  @Produces
  @Singleton
  Accounts accounts() {
    return accounts;
  }

  @Produces
  @Singleton
  Broker broker() {
    return broker;
  }

  @Produces
  @Singleton
  WrittenRecord record() {
    return record;
  }

  void start(@Observes StartupEvent event, @Any Instance<RolePart> parts) {
    needed(parts).forEach(RolePart::start);
  }

  void stop(@Observes ShutdownEvent event, @Any Instance<RolePart> parts) {
    needed(parts).forEach(RolePart::stop);
    broker.close();
  }

  /**
   * Alerts, and intake for its directory of encounters; the tests send the snapshots themselves.
   */
  private static Stream<RolePart> needed(Instance<RolePart> parts) {
    return parts.stream().filter(part -> part.role() == Role.ALERTS || part.role() == Role.INGEST);
  }
}
