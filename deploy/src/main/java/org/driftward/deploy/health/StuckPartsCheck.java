package org.driftward.deploy.health;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.sql.SQLException;
import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import javax.sql.DataSource;
import org.driftward.deploy.embedded.Watched;
import org.driftward.deploy.roles.PlayedParts;
import org.driftward.ground.part.Part.Condition;
import org.eclipse.microprofile.health.HealthCheck;
import org.eclipse.microprofile.health.HealthCheckResponse;
import org.eclipse.microprofile.health.HealthCheckResponseBuilder;
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
      stuck |= isStuck(part.name(), part.condition(), groundHolds, response);
    }
    // An embedded part that cannot be started again is of this process; a new one may.
    for (var embedded : Watched.conditions().entrySet()) {
      stuck |= isStuck(embedded.getKey(), embedded.getValue(), true, response);
    }
    return response.status(!stuck).build();
  }

  private boolean isStuck(
      String name, Condition condition, boolean counts, HealthCheckResponseBuilder response) {
    var illness = illnesses.computeIfAbsent(name, it -> new Illness(PATIENCE, System::nanoTime));
    boolean stuck = illness.lasts(counts && !condition.well());
    if (stuck) {
      response.withData(name, condition.why());
    }
    return stuck;
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
