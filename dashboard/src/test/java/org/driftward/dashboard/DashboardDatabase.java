package org.driftward.dashboard;

import io.agroal.api.AgroalDataSource;
import io.agroal.api.configuration.supplier.AgroalDataSourceConfigurationSupplier;
import io.agroal.api.exceptionsorter.PostgreSQLExceptionSorter;
import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import io.zonky.test.db.postgres.embedded.EmbeddedPostgres;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.stream.Collectors;
import javax.sql.DataSource;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.store.BadRows;
import org.driftward.dashboard.store.StoredWards;
import org.driftward.ground.store.Database;
import org.driftward.ground.store.Quarantine;
import org.flywaydb.core.Flyway;

/** A real PostgreSQL with the dashboard's schema, one for all tests of the process. */
public final class DashboardDatabase {

  private static final String APP_ROLE = "driftward_app";
  private static final List<String> TABLES =
      List.of(
          "account",
          "sign_in_failure",
          "access",
          "encounter",
          "care_plan",
          "assessment",
          "snapshot",
          "episode",
          "episode_change");
  private static final EmbeddedPostgres POSTGRES = start();
  private static final AgroalDataSource POOL = pool();

  private DashboardDatabase() {}

  /** As the application connects: not as the owner. Every table is emptied first. */
  public static DataSource emptied() {
    run(
        TABLES.stream()
            .map(table -> "DELETE FROM dashboard." + table)
            .collect(Collectors.joining(";", "DELETE FROM ground.quarantine;", "")));
    return POOL;
  }

  public static Quarantine quarantine() {
    return new Quarantine(new Database(POOL), Clock.systemUTC(), new SimpleMeterRegistry());
  }

  public static StoredWards wards(Clock clock, DashboardConfig config) {
    return new StoredWards(
        new Database(POOL), clock, config, ids -> Map.of(), new BadRows(quarantine()));
  }

  /** As the owner of the tables. */
  public static void run(String sql) {
    try (var connection = POSTGRES.getPostgresDatabase().getConnection();
        var statement = connection.createStatement()) {
      statement.execute(sql);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static AgroalDataSource pool() {
    var url = POSTGRES.getJdbcUrl(APP_ROLE, "postgres");
    try {
      return AgroalDataSource.from(
          new AgroalDataSourceConfigurationSupplier()
              .connectionPoolConfiguration(
                  pool ->
                      pool.maxSize(8)
                          // As Quarkus has it: a lost connection is not handed out again.
                          .exceptionSorter(new PostgreSQLExceptionSorter())
                          .connectionFactoryConfiguration(factory -> factory.jdbcUrl(url))));
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }

  private static EmbeddedPostgres start() {
    try {
      var postgres = EmbeddedPostgres.start();
      var owner = postgres.getPostgresDatabase();
      try (var connection = owner.getConnection();
          var statement = connection.createStatement()) {
        statement.execute("CREATE ROLE " + APP_ROLE + " LOGIN");
      }
      Flyway.configure()
          .dataSource(owner)
          .locations("db/ground", "db/dashboard")
          .placeholders(Map.of("app_role", APP_ROLE))
          .load()
          .migrate();
      return postgres;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (SQLException e) {
      throw new IllegalStateException(e);
    }
  }
}
