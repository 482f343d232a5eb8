package org.driftward.ingest.web;

import io.quarkus.test.common.QuarkusTestResourceLifecycleManager;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.util.Map;

/** A real PostgreSQL for the application under test. */
public class RealDatabase implements QuarkusTestResourceLifecycleManager {

  private EmbeddedPostgres server;

  @Override
  public Map<String, String> start() {
    try {
      server = EmbeddedPostgres.start();
      return Map.of("quarkus.datasource.jdbc.url", server.getJdbcUrl("postgres", "postgres"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void stop() {
    try {
      server.close();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
