package org.driftward.deploy.whole;

import static org.assertj.core.api.Assertions.assertThat;
import static org.junit.jupiter.api.Assumptions.assumeTrue;

import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.testcontainers.DockerClientFactory;
import org.testcontainers.kafka.KafkaContainer;
import org.testcontainers.postgresql.PostgreSQLContainer;

/** On a Kafka and a PostgreSQL as they are shipped in images, where a Docker engine answers. */
class ContainersIT {

  @TempDir Path folder;

  @Test
  void shouldRunOnKafkaAndPostgresFromImages() {
    assumeTrue(
        DockerClientFactory.instance().isDockerAvailable(),
        "no Docker engine answers, so Kafka and PostgreSQL from images were not tried");
    try (var kafka = new KafkaContainer("apache/kafka:4.1.2");
        var postgres = new PostgreSQLContainer("postgres:17")) {
      kafka.start();
      postgres.start();
      var environment =
          Map.of(
              "KAFKA_BOOTSTRAP_SERVERS", kafka.getBootstrapServers(),
              "QUARKUS_DATASOURCE_JDBC_URL", postgres.getJdbcUrl(),
              "QUARKUS_DATASOURCE_USERNAME", postgres.getUsername(),
              "QUARKUS_DATASOURCE_PASSWORD", postgres.getPassword());
      try (var app = RunningApp.start(folder.resolve("data"), environment)) {
        var ward = Ward.open(app, "alder");

        assertThat(ward.admit("V-1", "1", "Tolliver, Maud").status()).isEqualTo(200);
        assertThat(folder.resolve("data/kafka")).doesNotExist();
        assertThat(folder.resolve("data/postgres")).doesNotExist();
      }
    }
  }
}
