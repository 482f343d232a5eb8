package org.driftward.dashboard.web.api;

import io.quarkus.runtime.ShutdownEvent;
import io.quarkus.runtime.StartupEvent;
import jakarta.enterprise.event.Observes;
import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.ZoneOffset;
import java.util.Map;
import org.driftward.dashboard.Samples;
import org.driftward.dashboard.contract.Setting;
import org.driftward.dashboard.stream.WardListener;
import org.driftward.ground.kafka.KafkaAccess;

/** What the composition in deploy provides. No part that needs Kafka is started. */
@Singleton
public class Composition {

  @Produces
  @Singleton
  Clock clock() {
    return Clock.fixed(Samples.at(10), ZoneOffset.UTC);
  }

  @Produces
  @Singleton
  KafkaAccess kafka() {
    return new KafkaAccess(Map.of("bootstrap.servers", "127.0.0.1:9"));
  }

  @Produces
  @Singleton
  Setting setting() {
    return new Setting(false, 1);
  }

  void start(@Observes StartupEvent event, WardListener listener) {
    listener.start();
  }

  void stop(@Observes ShutdownEvent event, WardListener listener) {
    listener.stop();
  }
}
