package org.driftward.deploy.whole;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.stream.Collectors;
import java.util.stream.Stream;

/**
 * A program that pages people: takes every call slowly enough for a caller to die meanwhile, and
 * knows a repetition by its key.
 */
final class Pager implements AutoCloseable {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final long SLOWNESS_MILLIS = 150;

  /** One call, whether or not it is a repetition. */
  record Page(String key, Instant arrived, JsonNode body) {
    String episode() {
      return body.get("episode").asText();
    }

    int rung() {
      return body.get("rung").asInt();
    }

    Instant at() {
      return Instant.parse(body.get("at").asText());
    }

    Instant answerBy() {
      return Instant.parse(body.get("answerBy").asText());
    }
  }

  private final Map<String, List<Page>> byKey = new ConcurrentHashMap<>();
  private final ExecutorService pool = Executors.newCachedThreadPool();
  private final HttpServer server;

  Pager() {
    try {
      server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    server.createContext("/call", this::take);
    server.setExecutor(pool);
    server.start();
  }

  String url() {
    return "http://127.0.0.1:" + server.getAddress().getPort() + "/call";
  }

  /** The calls of each key, oldest first. */
  Map<String, List<Page>> byKey() {
    return byKey;
  }

  /** The first call of each key. */
  List<Page> pages() {
    return byKey.values().stream().map(calls -> calls.get(0)).toList();
  }

  /** Whether each of these episodes has been told of at the rung. */
  boolean hasAll(Collection<String> episodes, int rung) {
    return pages().stream()
        .filter(page -> page.rung() == rung)
        .map(Page::episode)
        .collect(Collectors.toSet())
        .containsAll(episodes);
  }

  private void take(HttpExchange exchange) throws IOException {
    try (exchange) {
      var key = exchange.getRequestHeaders().getFirst("Idempotency-Key");
      var text = new String(exchange.getRequestBody().readAllBytes(), StandardCharsets.UTF_8);
      byKey.merge(key, List.of(new Page(key, Instant.now(), JSON.readTree(text))), Pager::together);
      Thread.sleep(SLOWNESS_MILLIS);
      exchange.sendResponseHeaders(202, -1);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  private static List<Page> together(List<Page> earlier, List<Page> later) {
    return Stream.concat(earlier.stream(), later.stream()).toList();
  }

  @Override
  public void close() {
    server.stop(0);
    pool.shutdownNow();
  }
}
