package org.driftward.deploy.health;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.util.concurrent.ExecutionException;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/** Red as long as no broker answers. */
@Readiness
@Singleton
public class KafkaCheck implements HealthCheck {

  private final KafkaProbe kafka;

  @Inject
  KafkaCheck(KafkaProbe kafka) {
    this.kafka = kafka;
  }

  @Override
  public HealthCheckResponse call() {
    var response = HealthCheckResponse.named("kafka");
    try {
      int brokers = kafka.brokers();
      return response.status(brokers > 0).withData("brokers", brokers).build();
    } catch (ExecutionException e) {
      return response.down().withData("why", e.getCause().getClass().getSimpleName()).build();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return response.down().withData("why", "interrupted").build();
    }
  }
}
