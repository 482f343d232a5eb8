package org.driftward.deploy.embedded;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On the real programs, as whoever runs the tests: root too. */
class EmbeddedDatabaseTest {

  private static final String DENIED = "42501";
  private static final String WRONG_PASSWORD = "28P01";

  @TempDir Path folder;

  @Test
  void shouldFindItsRowsAgainAfterARestart() throws Exception {
    try (var database = start();
        var owner = asOwner(database)) {
      owner.createStatement().execute("CREATE TABLE public.kept AS SELECT 7 AS row");
    }
    try (var database = start();
        var owner = asOwner(database)) {
      assertThat(number(owner, "SELECT row FROM public.kept")).isEqualTo(7);
    }
  }

  @Test
  void shouldTakeOverFromAServerThatOutlivedItsApplication() throws Exception {
    var abandoned = start();
    try (var owner = asOwner(abandoned)) {
      owner.createStatement().execute("CREATE TABLE public.kept AS SELECT 7 AS row");
    }

    try (var database = start();
        var owner = asOwner(database)) {
      assertThat(number(owner, "SELECT row FROM public.kept")).isEqualTo(7);
      assertThatExceptionOfType(SQLException.class).isThrownBy(() -> asOwner(abandoned).close());
    }
  }

  @Test
  void shouldStartThoughItsPidFileNamesAnotherProcess() throws Exception {
    start().close();
    var pidFile = folder.resolve("cluster").resolve("postmaster.pid");
    Files.writeString(pidFile, ProcessHandle.current().pid() + "\n");

    try (var database = start();
        var owner = asOwner(database)) {
      assertThat(number(owner, "SELECT 1")).isEqualTo(1);
    }
  }

  @Test
  void shouldNotLetTheApplicationMakeTables() throws Exception {
    try (var database = start();
        var application = asApplication(database)) {
      assertThatExceptionOfType(SQLException.class)
          .isThrownBy(() -> application.createStatement().execute("CREATE TABLE mine (a int)"))
          .extracting(SQLException::getSQLState)
          .isEqualTo(DENIED);
    }
  }

  @Test
  void shouldLetNobodyInWithoutThePassword() throws Exception {
    try (var database = start()) {
      var url = database.properties().get("quarkus.datasource.jdbc.url");
      assertThatExceptionOfType(SQLException.class)
          .isThrownBy(() -> DriverManager.getConnection(url, "postgres", "postgres").close())
          .extracting(SQLException::getSQLState)
          .isEqualTo(WRONG_PASSWORD);
    }
  }

  private EmbeddedDatabase start() throws Exception {
    return EmbeddedDatabase.start(folder, 0, new Secrets(folder));
  }

  private static Connection asOwner(EmbeddedDatabase database) throws SQLException {
    return connect(database, "quarkus.flyway.");
  }

  private static Connection asApplication(EmbeddedDatabase database) throws SQLException {
    return connect(database, "quarkus.datasource.");
  }

  private static Connection connect(EmbeddedDatabase database, String login) throws SQLException {
    var properties = database.properties();
    return DriverManager.getConnection(
        properties.get("quarkus.datasource.jdbc.url"),
        properties.get(login + "username"),
        properties.get(login + "password"));
  }

  private static int number(Connection connection, String sql) throws SQLException {
    try (var rows = connection.createStatement().executeQuery(sql)) {
      rows.next();
      return rows.getInt(1);
    }
  }
}
