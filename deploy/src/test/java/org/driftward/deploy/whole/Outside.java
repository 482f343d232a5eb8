package org.driftward.deploy.whole;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.Locale;
import java.util.Map;
import org.driftward.deploy.embedded.EmbeddedBroker;
import org.driftward.deploy.embedded.EmbeddedDatabase;
import org.driftward.deploy.embedded.EmbeddedPart;
import org.driftward.deploy.embedded.Secrets;

/**
 * A broker and a database that belong to no application: the hospital's own, as far as the
 * application can tell. Each can be taken away and comes back where it was, with its data.
 */
public final class Outside implements AutoCloseable {

  static final String PASSWORD = "between-us";

  private final Path folder;
  private final Secrets secrets;
  private final BrokerStart brokers;
  private final int kafkaPort;
  private final int postgresPort;
  private EmbeddedPart broker;
  private EmbeddedPart database;

  public Outside(Path folder) {
    this(folder, EmbeddedBroker::start);
  }

  /** How a broker is started in a folder: in this process or in one of its own. */
  @FunctionalInterface
  interface BrokerStart {
    EmbeddedPart start(Path folder, int port, String password);
  }

  Outside(Path folder, BrokerStart brokers) {
    this.folder = folder;
    this.brokers = brokers;
    try {
      this.secrets = new Secrets(folder);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    this.broker = startBroker(0);
    this.database = startDatabase(0);
    var bootstrap = broker.properties().get("kafka.bootstrap.servers");
    this.kafkaPort = URI.create("kafka://" + bootstrap).getPort();
    var url = database.properties().get("quarkus.datasource.jdbc.url");
    this.postgresPort = URI.create(url.substring("jdbc:".length())).getPort();
  }

  /** The variables that lead an application here. */
  public Map<String, String> environment() {
    var variables = new HashMap<String, String>();
    broker.properties().forEach((name, value) -> variables.put(variable(name), value));
    database.properties().forEach((name, value) -> variables.put(variable(name), value));
    return variables;
  }

  /** The settings that lead a Kafka client here. */
  public Map<String, Object> kafka() {
    var settings = new HashMap<String, Object>();
    broker
        .properties()
        .forEach((name, value) -> settings.put(name.substring("kafka.".length()), value));
    return settings;
  }

  void takeBrokerAway() {
    broker.close();
  }

  void bringBrokerBack() {
    broker = startBroker(kafkaPort);
  }

  void takeDatabaseAway() {
    database.close();
  }

  void bringDatabaseBack() {
    database = startDatabase(postgresPort);
  }

  /** Ends the broker's process without a word. */
  void killBroker() {
    ((BrokerProcess) broker).kill();
  }

  /** Ends the database server without a word; its helpers notice and follow. */
  void killDatabase() {
    try (var lines = Files.lines(folder("postgres").resolve("cluster/postmaster.pid"))) {
      var pid = Long.parseLong(lines.findFirst().orElseThrow().strip());
      var server = ProcessHandle.of(pid).orElseThrow();
      server.destroyForcibly();
      server.onExit().join();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public void close() {
    broker.close();
    database.close();
  }

  private EmbeddedPart startBroker(int port) {
    return brokers.start(folder("kafka"), port, PASSWORD);
  }

  private EmbeddedPart startDatabase(int port) {
    return EmbeddedDatabase.start(folder("postgres"), port, secrets);
  }

  private Path folder(String name) {
    try {
      return Files.createDirectories(folder.resolve(name));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String variable(String property) {
    return property.toUpperCase(Locale.ROOT).replaceAll("[^A-Z0-9]", "_");
  }
}
