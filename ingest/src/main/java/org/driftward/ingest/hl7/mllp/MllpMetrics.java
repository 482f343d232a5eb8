package org.driftward.ingest.hl7.mllp;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Singleton;
import java.util.Collection;

/** What the listener counts. Thread-safe. */
@Singleton
public final class MllpMetrics {

  private final MeterRegistry registry;
  private final Counter turnedAway;
  private final Counter broken;

  public MllpMetrics(MeterRegistry registry) {
    this.registry = registry;
    this.turnedAway =
        Counter.builder("driftward.mllp.turned.away")
            .description("Connections closed at once because there were too many")
            .register(registry);
    this.broken =
        Counter.builder("driftward.mllp.broken")
            .description("Messages that broke off before their end")
            .register(registry);
  }

  void count(Collection<?> connections) {
    Gauge.builder("driftward.mllp.connections", connections, Collection::size)
        .description("Senders connected now")
        .register(registry);
  }

  void turnedAway() {
    turnedAway.increment();
  }

  void broken() {
    broken.increment();
  }
}
