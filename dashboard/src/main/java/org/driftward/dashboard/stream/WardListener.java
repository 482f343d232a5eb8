package org.driftward.dashboard.stream;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Duration;
import java.util.concurrent.CountDownLatch;
import java.util.concurrent.TimeUnit;
import javax.sql.DataSource;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;
import org.postgresql.PGConnection;

/**
 * Hears from PostgreSQL which wards have changed, whichever process changed them. Holds one
 * connection of the pool for as long as it runs. Between a lost connection and the next one news
 * may be missed, so everybody is told to look again.
 */
@ApplicationScoped
public class WardListener implements RolePart {

  private static final Logger LOG = Logger.getLogger(WardListener.class);
  private static final int WAIT_MILLIS = 500;
  private static final int QUIET_ROUNDS_BEFORE_PROBE = 20;
  private static final int PROBE_SECONDS = 5;
  private static final Duration PAUSE = Duration.ofSeconds(1);
  private static final Duration GRACE = Duration.ofSeconds(10);

  private final DataSource dataSource;
  private final WardMulticaster multicaster;
  private volatile CountDownLatch stopping = new CountDownLatch(0);
  private volatile Condition condition = Condition.ill("not started");
  private @Nullable Thread thread;

  public WardListener(DataSource dataSource, WardMulticaster multicaster) {
    this.dataSource = dataSource;
    this.multicaster = multicaster;
  }

  @Override
  public Role role() {
    return Role.DASHBOARD;
  }

  @Override
  public String name() {
    return "ward-listener";
  }

  @Override
  public void start() {
    stopping = new CountDownLatch(1);
    var started = new Thread(this::run, "driftward-ward-listener");
    started.setDaemon(true);
    thread = started;
    started.start();
  }

  @Override
  public void stop() {
    stopping.countDown();
    var running = thread;
    if (running != null) {
      try {
        running.join(GRACE.toMillis());
      } catch (InterruptedException e) {
        Thread.currentThread().interrupt();
      }
      thread = null;
    }
    condition = Condition.ill("stopped");
  }

  @Override
  public Condition condition() {
    return condition;
  }

  private void run() {
    do {
      try (var connection = dataSource.getConnection()) {
        listen(connection);
      } catch (SQLException e) {
        condition = Condition.ill("the database does not answer");
        LOG.warnf("Listening failed and starts again: SQLSTATE %s", e.getSQLState());
      }
    } while (!stopped(PAUSE));
  }

  private void listen(Connection connection) throws SQLException {
    try (var statement = connection.createStatement()) {
      statement.execute("LISTEN " + ReadModel.CHANNEL);
    }
    condition = Condition.ok();
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
    while (!stopped(Duration.ZERO)) {
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

  private boolean stopped(Duration within) {
    try {
      return stopping.await(within.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return true;
    }
  }
}
