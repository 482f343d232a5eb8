package org.driftward.alerts.notify;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.util.ArrayDeque;
import java.util.List;
import java.util.Map;
import java.util.Queue;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.Executors;

/** A real HTTP server, as a program that pages people has one. */
public final class Receiver implements AutoCloseable {

  /** One call as it came in. */
  public record Call(Map<String, List<String>> headers, String body) {
    public String header(String name) {
      return headers.get(name).get(0);
    }
  }

  /** How it answers once. */
  private record Answer(int status, String retryAfter, long afterMillis) {}

  public final List<Call> calls = new CopyOnWriteArrayList<>();
  private final Queue<Answer> answers = new ArrayDeque<>();
  private final HttpServer server;

  /**
   * @param port 0 for a free one
   */
  public Receiver(int port) {
    try {
      server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), port), 0);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    server.createContext("/call", this::take);
    server.setExecutor(Executors.newCachedThreadPool());
    server.start();
  }

  public String url() {
    return "http://127.0.0.1:" + server.getAddress().getPort() + "/call";
  }

  /** The next answer; 202 once there are none. */
  public Receiver answers(int status) {
    return answers(status, "", 0);
  }

  public synchronized Receiver answers(int status, String retryAfter, long afterMillis) {
    answers.add(new Answer(status, retryAfter, afterMillis));
    return this;
  }

  private void take(HttpExchange exchange) throws IOException {
    try (exchange) {
      var body = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
      calls.add(new Call(Map.copyOf(exchange.getRequestHeaders()), body));
      var answer = next();
      Thread.sleep(answer.afterMillis());
      if (!answer.retryAfter().isEmpty()) {
        exchange.getResponseHeaders().add("Retry-After", answer.retryAfter());
      }
      exchange.sendResponseHeaders(answer.status(), -1);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private synchronized Answer next() {
    return answers.isEmpty() ? new Answer(202, "", 0) : answers.remove();
  }

  @Override
  public void close() {
    server.stop(0);
  }
}
