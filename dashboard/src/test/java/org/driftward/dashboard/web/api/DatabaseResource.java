package org.driftward.dashboard.web.api;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;

/** A real PostgreSQL for the application under test. */
public class DatabaseResource implements QuarkusTestResourceLifecycleManager {

  private EmbeddedPostgres postgres;

  @Override
  public Map<String, String> start() {
    try {
      postgres = EmbeddedPostgres.start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    return Map.of(
        "quarkus.datasource.jdbc.url", postgres.getJdbcUrl("postgres", "postgres"),
        "quarkus.datasource.username", "postgres",
        "quarkus.datasource.password", "postgres",
        "quarkus.flyway.placeholders.app_role", "postgres");
  }

  @Override
  public void stop() {
    try {
      postgres.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
