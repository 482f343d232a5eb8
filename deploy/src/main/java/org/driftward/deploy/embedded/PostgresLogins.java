package org.driftward.deploy.embedded;

import java.io.IOException;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Properties;
import org.postgresql.Driver;
import org.postgresql.util.PSQLState;

/**
 * The database of the application and the two who use it: the owner, who makes the tables, and the
 * application, which may not change them, so that it cannot rewrite the journal either.
 */
final class PostgresLogins {

  static final String DATABASE = "driftward";
  private static final String OWNER = "driftward_owner";
  private static final String APPLICATION = "driftward";
  private static final long PAUSE_MILLIS = 50;

  private final int port;
  private final Login superuser;
  private final Login owner;
  private final Login application;

  /**
   * @param user name of the role
   */
  record Login(String user, String password) {
    /** Names no secret. */
    @Override
    public String toString() {
      return "Login[" + user + "]";
    }
  }

  PostgresLogins(int port, Secrets secrets) throws IOException {
    this.port = port;
    this.superuser = new Login("postgres", secrets.get("postgres.superuser"));
    this.owner = new Login(OWNER, secrets.get("postgres.owner"));
    this.application = new Login(APPLICATION, secrets.get("postgres.application"));
  }

  Login owner() {
    return owner;
  }

  Login application() {
    return application;
  }

  /** Waits for the server, then makes what is missing. */
  void prepare(Duration patience, Process server) throws IOException, InterruptedException {
    try (var connection = connect(patience, server)) {
      for (var login : new Login[] {owner, application}) {
        if (!exists(connection, "SELECT 1 FROM pg_roles WHERE rolname = ?", login.user())) {
          execute(connection, "CREATE ROLE " + login.user() + " LOGIN");
        }
        execute(connection, "ALTER ROLE " + login.user() + " PASSWORD '" + login.password() + "'");
      }
      if (!exists(connection, "SELECT 1 FROM pg_database WHERE datname = ?", DATABASE)) {
        execute(connection, "CREATE DATABASE " + DATABASE + " OWNER " + OWNER);
        execute(connection, "REVOKE ALL ON DATABASE " + DATABASE + " FROM PUBLIC");
        execute(connection, "GRANT CONNECT ON DATABASE " + DATABASE + " TO " + APPLICATION);
      }
    } catch (SQLException e) {
      throw new IOException("its database cannot be prepared: " + e.getMessage(), e);
    }
  }

  private Connection connect(Duration patience, Process server)
      throws IOException, InterruptedException, SQLException {
    long end = System.nanoTime() + patience.toNanos();
    while (true) {
      try {
        return open();
      } catch (SQLException e) {
        if (!mayYetCome(e) || !server.isAlive() || System.nanoTime() > end) {
          throw e;
        }
        Thread.sleep(PAUSE_MILLIS);
      }
    }
  }

  private Connection open() throws SQLException {
    var properties = new Properties();
    properties.setProperty("user", superuser.user());
    properties.setProperty("password", superuser.password());
    return new Driver().connect("jdbc:postgresql://127.0.0.1:" + port + "/postgres", properties);
  }

  /** Not listening yet, or still recovering (57P03, cannot_connect_now). */
  private static boolean mayYetCome(SQLException e) {
    return PSQLState.isConnectionError(e.getSQLState()) || "57P03".equals(e.getSQLState());
  }

  private static boolean exists(Connection connection, String sql, String name)
      throws SQLException {
    try (var statement = connection.prepareStatement(sql)) {
      statement.setString(1, name);
      try (var rows = statement.executeQuery()) {
        return rows.next();
      }
    }
  }

  private static void execute(Connection connection, String sql) throws SQLException {
    try (var statement = connection.createStatement()) {
      statement.execute(sql);
    }
  }
}
