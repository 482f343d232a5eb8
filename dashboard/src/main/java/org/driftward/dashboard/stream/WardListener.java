package org.driftward.dashboard.stream;

import jakarta.inject.Singleton;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import javax.sql.DataSource;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.ground.part.Part.Condition;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.postgresql.PGConnection;

/**
 * Hears from PostgreSQL which wards have changed, whichever process changed them. Holds one
 * connection of the pool for as long as it runs. Between a lost connection and the next one news
 * may be missed, so everybody is told to look again.
 */
@Singleton
public class WardListener extends RepeatingPart implements RolePart {

  private static final int WAIT_MILLIS = 500;
  private static final int QUIET_ROUNDS_BEFORE_PROBE = 20;
  private static final int PROBE_SECONDS = 5;
  private static final Duration PAUSE = Duration.ofSeconds(1);

  private final DataSource dataSource;
  private final WardMulticaster multicaster;

  public WardListener(DataSource dataSource, WardMulticaster multicaster) {
    super("ward-listener", PAUSE);
    this.dataSource = dataSource;
    this.multicaster = multicaster;
  }

  @Override
  public Role role() {
    return Role.DASHBOARD;
  }

  /** Lasts as long as its connection. */
  @Override
  public Duration run() throws SQLException {
    say(Condition.ill("not connected to the database"));
    try (var connection = dataSource.getConnection()) {
      listen(connection);
    }
    return Duration.ZERO;
  }

  private void listen(Connection connection) throws SQLException {
    try (var statement = connection.createStatement()) {
      statement.execute("LISTEN " + ReadModel.CHANNEL);
    }
    say(Condition.ok());
    multicaster.everythingMayHaveChanged();
    try {
      hear(connection);
    } finally {
      // The connection goes back to the pool and must not listen on.
      try (var statement = connection.createStatement()) {
        statement.execute("UNLISTEN *");
      }
    }
  }

  private void hear(Connection connection) throws SQLException {
    var postgres = connection.unwrap(PGConnection.class);
    int quiet = 0;
    while (!stopping()) {
      var heard = postgres.getNotifications(WAIT_MILLIS);
      if (heard != null && heard.length > 0) {
        quiet = 0;
        for (var notification : heard) {
          multicaster.changed(notification.getParameter());
        }
      } else if (++quiet >= QUIET_ROUNDS_BEFORE_PROBE) {
        quiet = 0;
        if (!connection.isValid(PROBE_SECONDS)) {
          throw new SQLException("the connection is dead", "08006");
        }
      }
    }
  }
}
