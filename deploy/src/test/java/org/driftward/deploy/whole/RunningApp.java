package org.driftward.deploy.whole;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.ServerSocket;
import java.net.URI;
import java.net.http.HttpClient;
import java.net.http.HttpRequest;
import java.net.http.HttpRequest.BodyPublishers;
import java.net.http.HttpResponse;
import java.net.http.HttpResponse.BodyHandlers;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.Base64;
import java.util.Map;
import java.util.TreeMap;
import java.util.concurrent.TimeUnit;
import org.awaitility.Awaitility;

/** The packaged application, started as a child process. Not thread-safe. */
final class RunningApp implements AutoCloseable {

  static final String ADMIN = "admin";
  static final String PASSWORD = "for-this-test-only-1";

  private static final Path JAR = Path.of("target", "quarkus-app", "quarkus-run.jar");
  private static final Duration PATIENCE = Duration.ofMinutes(3);

  private final HttpClient http =
      HttpClient.newBuilder().connectTimeout(Duration.ofSeconds(5)).build();
  private final Path data;
  private final Map<String, String> settings;
  private final int port = freePort();
  private Process process;

  private RunningApp(Path data, Map<String, String> settings) {
    this.data = data;
    this.settings = settings;
  }

  /** Starts on the data folder, and returns when the application says that it is ready. */
  static RunningApp start(Path data, Map<String, String> settings) {
    var app = new RunningApp(data, settings);
    app.start();
    return app;
  }

  void start() {
    var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    var builder =
        new ProcessBuilder(
            java, "-XX:+UseSerialGC", "-XX:TieredStopAtLevel=1", "-jar", JAR.toString());
    var environment = new TreeMap<>(settings);
    environment.put("DRIFTWARD_DATA", data.toString());
    environment.put("DRIFTWARD_ADMIN_PASSWORD", PASSWORD);
    environment.put("QUARKUS_HTTP_PORT", Integer.toString(port));
    builder.environment().putAll(environment);
    builder.redirectErrorStream(true);
    builder.redirectOutput(ProcessBuilder.Redirect.appendTo(console().toFile()));
    try {
      process = builder.start();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    Awaitility.await("ready")
        .atMost(PATIENCE)
        .pollInterval(Duration.ofMillis(250))
        .until(
            () -> {
              if (!process.isAlive()) {
                throw new IllegalStateException("it ended by itself: " + text(console()));
              }
              return isReady();
            });
  }

  /** Ends the process as a power cut would: it gets no chance to finish anything. */
  void kill() {
    process.destroyForcibly();
    waitForEnd();
  }

  @Override
  public void close() {
    process.destroy();
    if (!ended(Duration.ofSeconds(40))) {
      process.destroyForcibly();
      waitForEnd();
      throw new IllegalStateException("it did not stop when asked to");
    }
  }

  URI at(String path) {
    return URI.create("http://127.0.0.1:" + port + path);
  }

  HttpResponse<String> get(String account, String path) {
    return send(request(account, path).GET().build());
  }

  HttpResponse<String> put(String account, String path, String json) {
    return send(json(account, path).PUT(BodyPublishers.ofString(json)).build());
  }

  HttpResponse<String> post(String account, String path, String json) {
    return send(json(account, path).POST(BodyPublishers.ofString(json)).build());
  }

  /** A request that the test completes itself; {@code account} may be null for nobody. */
  HttpRequest.Builder request(String account, String path) {
    var request = HttpRequest.newBuilder(at(path)).timeout(Duration.ofSeconds(60));
    if (account != null) {
      var pair = (account + ":" + PASSWORD).getBytes(StandardCharsets.UTF_8);
      request.header("Authorization", "Basic " + Base64.getEncoder().encodeToString(pair));
    }
    return request;
  }

  HttpResponse<String> send(HttpRequest request) {
    try {
      return http.send(request, BodyHandlers.ofString());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new IllegalStateException(e);
    }
  }

  /** Everything it has written where an operator would look. */
  String logs() {
    var file = data.resolve("log").resolve("driftward.log");
    return text(console()) + (Files.exists(file) ? text(file) : "");
  }

  private HttpRequest.Builder json(String account, String path) {
    return request(account, path).header("Content-Type", "application/json");
  }

  private boolean isReady() {
    try {
      var answer =
          http.send(request(null, "/q/health/ready").GET().build(), BodyHandlers.ofString());
      return answer.statusCode() == 200;
    } catch (IOException e) {
      return false;
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private Path console() {
    return data.resolveSibling(data.getFileName() + ".console");
  }

  private void waitForEnd() {
    if (!ended(Duration.ofSeconds(20))) {
      throw new IllegalStateException("it cannot be killed");
    }
  }

  private boolean ended(Duration within) {
    try {
      return process.waitFor(within.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      return false;
    }
  }

  private static String text(Path file) {
    try {
      return Files.readString(file);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static int freePort() {
    try (var socket = new ServerSocket(0)) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
