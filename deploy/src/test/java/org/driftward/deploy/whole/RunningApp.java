package org.driftward.deploy.whole;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.net.URI;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.TimeUnit;

/**
 * The packaged application in a process of its own, on free ports of loopback, with its data in the
 * folder given. Can be stopped or killed, and started again on the same folder.
 */
public final class RunningApp implements AutoCloseable {

  /** Of the account {@code admin}. */
  public static final String ADMIN_PASSWORD = "let-the-tests-in";

  private static final Path JAR = Path.of("target", "quarkus-app", "quarkus-run.jar");
  private static final Duration PATIENCE = Duration.ofMinutes(5);
  private static final List<String> QUICK_START =
      List.of("-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-Xmx768m");
  private static final List<String> OURS = List.of("DRIFTWARD_", "QUARKUS_", "KAFKA_");

  private final Path data;
  private final Path terminal;
  private final int port;
  private final int mllpPort;
  private final Process process;

  private RunningApp(Path data, Path terminal, int port, int mllpPort, Process process) {
    this.data = data;
    this.terminal = terminal;
    this.port = port;
    this.mllpPort = mllpPort;
    this.process = process;
  }

  /** Everything embedded, all roles. */
  public static RunningApp start(Path data) {
    return start(data, Map.of());
  }

  /**
   * Returns once the application is ready.
   *
   * @param data its data folder
   * @param environment besides the folder, the ports and the first account's password
   */
  public static RunningApp start(Path data, Map<String, String> environment) {
    return start(data, environment, QUICK_START);
  }

  /** As {@link #start(Path, Map)}, on a virtual machine with these options. */
  public static RunningApp start(
      Path data, Map<String, String> environment, List<String> javaOptions) {
    var app = launch(data, environment, javaOptions);
    app.awaitReady();
    return app;
  }

  /** As {@link #start(Path, Map)}, but returns at once: others may go on meanwhile. */
  static RunningApp launch(Path data, Map<String, String> environment) {
    return launch(data, environment, QUICK_START);
  }

  private static RunningApp launch(
      Path data, Map<String, String> environment, List<String> javaOptions) {
    try {
      Files.createDirectories(data);
      var terminal = Files.createTempFile(data.getParent(), "terminal-", ".log");
      int port = freePort();
      int mllpPort = freePort();
      var builder =
          new ProcessBuilder(command(javaOptions))
              .redirectErrorStream(true)
              .redirectOutput(terminal.toFile());
      var variables = builder.environment();
      variables.keySet().removeIf(name -> OURS.stream().anyMatch(name::startsWith));
      variables.put("DRIFTWARD_DATA", data.toString());
      variables.put("DRIFTWARD_ADMIN_PASSWORD", ADMIN_PASSWORD);
      variables.put("DRIFTWARD_MLLP_PORT", String.valueOf(mllpPort));
      variables.put("QUARKUS_HTTP_PORT", String.valueOf(port));
      variables.putAll(environment);
      return new RunningApp(data, terminal, port, mllpPort, builder.start());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public URI address() {
    return URI.create("http://127.0.0.1:" + port);
  }

  /** Where it listens for HL7 v2, on loopback. */
  public int mllpPort() {
    return mllpPort;
  }

  /** Somebody who asks over HTTP with Basic. */
  public Caller as(String account, String password) {
    return new Caller(address(), account, password);
  }

  public Caller asAdmin() {
    return as("admin", ADMIN_PASSWORD);
  }

  public Caller asNobody() {
    return new Caller(address(), null, null);
  }

  /** Everything it wrote: the log file and the terminal. */
  public String written() {
    try {
      return Files.readString(terminal) + Files.readString(data.resolve("log/driftward.log"));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Processor time it used so far; that of its database server is not counted. */
  public Duration cpu() {
    return process.info().totalCpuDuration().orElseThrow();
  }

  public long pid() {
    return process.pid();
  }

  public boolean isAlive() {
    return process.isAlive();
  }

  /**
   * Asks it to end, as Ctrl-C and an orchestrator do.
   *
   * @return the exit code
   */
  public int stop() {
    process.destroy();
    return awaitEnd();
  }

  /** Ends it without a word, as a power cut does. Its database server lives on for a while. */
  public void kill() {
    process.destroyForcibly();
    awaitEnd();
  }

  /** Takes its embedded database server away. */
  public void killDatabase() {
    var server = databaseServer().orElseThrow();
    server.destroyForcibly();
    server.onExit().join();
  }

  /** Leaves nothing running, whatever happened before. */
  @Override
  public void close() {
    if (process.isAlive()) {
      stop();
    }
    databaseServer().ifPresent(ProcessHandle::destroyForcibly);
  }

  private Optional<ProcessHandle> databaseServer() {
    var pidFile = data.resolve("postgres/cluster/postmaster.pid");
    if (!Files.exists(pidFile)) {
      return Optional.empty();
    }
    try (var lines = Files.lines(pidFile)) {
      return lines
          .findFirst()
          .flatMap(pid -> ProcessHandle.of(Long.parseLong(pid.strip())))
          .filter(
              server -> server.info().command().filter(it -> it.endsWith("postgres")).isPresent());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private int awaitEnd() {
    try {
      if (!process.waitFor(60, TimeUnit.SECONDS)) {
        process.destroyForcibly();
        throw new AssertionError("The application does not end:\n" + tail());
      }
      return process.exitValue();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError("interrupted", e);
    }
  }

  void awaitReady() {
    long end = System.nanoTime() + PATIENCE.toNanos();
    while (!asNobody().answers("/q/health")) {
      if (!process.isAlive() || System.nanoTime() > end) {
        close();
        throw new AssertionError("The application does not become ready:\n" + tail());
      }
      pause();
    }
  }

  static void pause() {
    try {
      Thread.sleep(200);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new AssertionError("interrupted", e);
    }
  }

  private String tail() {
    try {
      var lines = Files.readAllLines(terminal);
      return String.join("\n", lines.subList(Math.max(0, lines.size() - 40), lines.size()));
    } catch (IOException e) {
      return e.toString();
    }
  }

  private static List<String> command(List<String> javaOptions) {
    if (!Files.exists(JAR)) {
      throw new AssertionError("Not packaged: " + JAR.toAbsolutePath());
    }
    var command = new ArrayList<String>();
    command.add(Path.of(System.getProperty("java.home"), "bin", "java").toString());
    command.addAll(javaOptions);
    command.addAll(List.of("-jar", JAR.toAbsolutePath().toString()));
    return command;
  }

  private static int freePort() throws IOException {
    try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }
}
