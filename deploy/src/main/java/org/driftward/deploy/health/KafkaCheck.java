package org.driftward.deploy.health;

import jakarta.annotation.PreDestroy;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.DescribeClusterOptions;
import org.driftward.ingest.contract.KafkaAccess;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Readiness;

/** Asks the brokers who they are. Red as long as none answers within {@link #PATIENCE}. */
@Readiness
@Singleton
public class KafkaCheck implements HealthCheck {

  private static final Duration PATIENCE = Duration.ofSeconds(3);

  private final Admin admin;

  @Inject
  KafkaCheck(KafkaAccess access) {
    this.admin = Admin.create(Map.copyOf(access.settings()));
  }

  @Override
  public HealthCheckResponse call() {
    var response = HealthCheckResponse.named("kafka");
    try {
      int brokers = brokers();
      return response.status(brokers > 0).withData("brokers", brokers).build();
    } catch (ExecutionException e) {
      return response.down().withData("why", e.getCause().getClass().getSimpleName()).build();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return response.down().withData("why", "interrupted").build();
    }
  }

  boolean answers() {
    return call().getStatus() == HealthCheckResponse.Status.UP;
  }

  private int brokers() throws ExecutionException, InterruptedException {
    var options = new DescribeClusterOptions().timeoutMs((int) PATIENCE.toMillis());
    return admin.describeCluster(options).nodes().get().size();
  }

  @PreDestroy
  void close() {
    admin.close(Duration.ZERO);
  }
}
