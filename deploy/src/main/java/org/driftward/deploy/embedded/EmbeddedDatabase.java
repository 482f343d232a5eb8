package org.driftward.deploy.embedded;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Map;

/**
 * A real PostgreSQL as a child process on loopback. The cluster is made once and found again; its
 * port is new at every start. Everybody who connects needs a password.
 */
public final class EmbeddedDatabase implements Listening {

  private static final Duration PATIENCE = Duration.ofSeconds(90);

  private final PostgresCluster cluster;
  private final PostgresLogins logins;
  private final int port;

  private EmbeddedDatabase(PostgresCluster cluster, PostgresLogins logins, int port) {
    this.cluster = cluster;
    this.logins = logins;
    this.port = port;
  }

  /**
   * Starts and returns once the application's database accepts connections.
   *
   * @param folder of the programs and the cluster
   * @param wantedPort 0 for any free one
   */
  public static EmbeddedDatabase start(Path folder, int wantedPort, Secrets secrets) {
    try {
      var cluster = new PostgresCluster(folder);
      cluster.initialise(secrets.get("postgres.superuser"));
      cluster.stopLeftOver();
      int port = FreePort.choose(wantedPort);
      var server = cluster.start(port);
      var logins = new PostgresLogins(port, secrets);
      try {
        logins.prepare(PATIENCE, server);
      } catch (StartException | IOException | InterruptedException e) {
        cluster.stop();
        throw e;
      }
      return new EmbeddedDatabase(cluster, logins, port);
    } catch (IOException e) {
      throw new StartException("The embedded PostgreSQL does not start: " + e.getMessage(), e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new StartException("The start of the embedded PostgreSQL was interrupted", e);
    }
  }

  /** The application connects as one who may use the tables, Flyway as one who makes them. */
  @Override
  public Map<String, String> properties() {
    return Map.of(
        "quarkus.datasource.jdbc.url",
            "jdbc:postgresql://127.0.0.1:" + port + "/" + PostgresLogins.DATABASE,
        "quarkus.datasource.username", logins.application().user(),
        "quarkus.datasource.password", logins.application().password(),
        "quarkus.flyway.username", logins.owner().user(),
        "quarkus.flyway.password", logins.owner().password());
  }

  @Override
  public int port() {
    return port;
  }

  @Override
  public void close() {
    try {
      cluster.stop();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
