package org.driftward.ingest.store;

import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.SQLException;
import java.util.Map;
import javax.sql.DataSource;
import org.driftward.ground.store.Database;
import org.flywaydb.core.Flyway;

/**
 * A fresh database with intake's tables on a real PostgreSQL, which all tests share. The
 * application's role may only what the application may.
 */
public final class IntakeDatabase {

  private static final String APPLICATION = "application";
  private static final EmbeddedPostgres SERVER = start();
  private static int databases;

  public final DataSource owner;
  public final IntakeStore database;

  public IntakeDatabase() {
    var name = newDatabase();
    this.owner = SERVER.getDatabase("postgres", name);
    Flyway.configure()
        .dataSource(owner)
        .locations("db/ground", "db/ingest")
        .schemas("ingest", "ground")
        .placeholders(Map.of("app_role", APPLICATION))
        .load()
        .migrate();
    this.database = new IntakeStore(new Database(SERVER.getDatabase(APPLICATION, name)));
  }

  private static EmbeddedPostgres start() {
    try {
      var server = EmbeddedPostgres.start();
      execute(server.getPostgresDatabase(), "CREATE ROLE " + APPLICATION + " LOGIN");
      return server;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static synchronized String newDatabase() {
    var name = "intake" + ++databases;
    execute(SERVER.getPostgresDatabase(), "CREATE DATABASE " + name);
    return name;
  }

  static void execute(DataSource source, String sql) {
    try (var connection = source.getConnection();
        var statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException e) {
      throw new IllegalStateException(e.getMessage(), e);
    }
  }
}
