package org.driftward.deploy.health;

import jakarta.annotation.PreDestroy;
import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.DescribeClusterOptions;
import org.driftward.ground.kafka.KafkaAccess;

/** Asks the brokers who they are, on a connection that stays open. Thread-safe. */
@Singleton
public class KafkaProbe {

  private static final Duration PATIENCE = Duration.ofSeconds(3);

  private final Admin admin;

  @Inject
  KafkaProbe(KafkaAccess access) {
    this.admin = Admin.create(Map.copyOf(access.settings()));
  }

  /**
   * @return how many brokers answer for the cluster
   * @throws ExecutionException if none answers in time
   */
  int brokers() throws ExecutionException, InterruptedException {
    var options = new DescribeClusterOptions().timeoutMs((int) PATIENCE.toMillis());
    return admin.describeCluster(options).nodes().get().size();
  }

  @PreDestroy
  void close() {
    admin.close(Duration.ZERO);
  }
}
