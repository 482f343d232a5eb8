package org.driftward.deploy.health;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.sql.SQLException;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import javax.sql.DataSource;
import org.driftward.deploy.roles.PlayedParts;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.Liveness;

/**
 * Red when a part stays ill although Kafka and the database answer: then only a restart helps.
 * While either is away a restart helps nobody, and the illness does not count.
 */
@Liveness
@Singleton
public class StuckPartsCheck implements HealthCheck {

  private static final Duration PATIENCE = Duration.ofMinutes(2);
  private static final int DATABASE_SECONDS = 3;

  private final PlayedParts parts;
  private final KafkaProbe kafka;
  private final DataSource database;
  private final Map<String, Illness> illnesses = new HashMap<>();

  @Inject
  StuckPartsCheck(PlayedParts parts, KafkaProbe kafka, DataSource database) {
    this.parts = parts;
    this.kafka = kafka;
    this.database = database;
  }

  @Override
  public synchronized HealthCheckResponse call() {
    var response = HealthCheckResponse.named("stuck-parts");
    boolean groundHolds = databaseAnswers() && kafkaAnswers();
    boolean stuck = false;
    for (var part : parts.inOrder()) {
      var condition = part.condition();
      var illness =
          illnesses.computeIfAbsent(part.name(), name -> new Illness(PATIENCE, System::nanoTime));
      if (illness.lasts(groundHolds && !condition.well())) {
        response.withData(part.name(), condition.why());
        stuck = true;
      }
    }
    return response.status(!stuck).build();
  }

  private boolean kafkaAnswers() {
    try {
      return kafka.brokers() > 0;
    } catch (ExecutionException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private boolean databaseAnswers() {
    try (var connection = database.getConnection()) {
      return connection.isValid(DATABASE_SECONDS);
    } catch (SQLException e) {
      return false;
    }
  }
}
