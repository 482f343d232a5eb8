package org.driftward.deploy.whole;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.concurrent.TimeUnit;
import org.driftward.deploy.embedded.EmbeddedBroker;
import org.driftward.deploy.embedded.EmbeddedPart;
import org.driftward.testing.Logs;

/** A real broker in a process of its own, which can be killed without a word. */
final class BrokerProcess implements EmbeddedPart {

  private static final String READY = "ready.properties";

  private final Path folder;
  private final Process process;

  private BrokerProcess(Path folder, Process process) {
    this.folder = folder;
    this.process = process;
  }

  /** Runs until it is ended. Its client settings stand in the folder as soon as it is ready. */
  public static void main(String[] arguments) throws IOException, InterruptedException {
    Logs.quiet();
    var folder = Path.of(arguments[0]);
    var broker =
        EmbeddedBroker.start(folder.resolve("log"), Integer.parseInt(arguments[1]), arguments[2]);
    Runtime.getRuntime().addShutdownHook(new Thread(broker::close));
    var properties = new Properties();
    properties.putAll(broker.properties());
    var half = folder.resolve("half-" + READY);
    try (var out = Files.newBufferedWriter(half)) {
      properties.store(out, null);
    }
    Files.move(half, folder.resolve(READY));
    Thread.sleep(Long.MAX_VALUE);
  }

  /**
   * Returns once clients can connect.
   *
   * @param port 0 for any free one
   */
  static BrokerProcess start(Path folder, int port, String password) {
    try {
      Files.createDirectories(folder.resolve("log"));
      Files.deleteIfExists(folder.resolve(READY));
      var command =
          List.of(
              Path.of(System.getProperty("java.home"), "bin", "java").toString(),
              "-XX:+UseSerialGC",
              "-XX:TieredStopAtLevel=1",
              "-Xmx512m",
              "-cp",
              System.getProperty("java.class.path"),
              BrokerProcess.class.getName(),
              folder.toString(),
              String.valueOf(port),
              password);
      var process =
          new ProcessBuilder(command)
              .redirectErrorStream(true)
              .redirectOutput(folder.resolve("terminal.log").toFile())
              .start();
      var broker = new BrokerProcess(folder, process);
      broker.awaitReady();
      return broker;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public Map<String, String> properties() {
    var properties = new Properties();
    try (var in = Files.newBufferedReader(folder.resolve(READY))) {
      properties.load(in);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    var map = new HashMap<String, String>();
    properties.forEach((name, value) -> map.put((String) name, (String) value));
    return map;
  }

  void kill() {
    process.destroyForcibly();
    awaitEnd();
  }

  @Override
  public void close() {
    process.destroy();
    awaitEnd();
  }

  private void awaitReady() {
    for (int i = 0; i < 600; i++) {
      if (Files.exists(folder.resolve(READY))) {
        return;
      }
      if (!process.isAlive()) {
        break;
      }
      RunningApp.pause();
    }
    kill();
    throw new AssertionError("The broker does not become ready: " + folder);
  }

  private void awaitEnd() {
    try {
      if (!process.waitFor(30, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }
}
