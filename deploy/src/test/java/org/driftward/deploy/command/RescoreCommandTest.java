package org.driftward.deploy.command;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpExchange;
import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class RescoreCommandTest {

  private static final String VIEW =
      """
      {"id":"R-1","version":"tried","from":"2026-01-05T08:00:00Z","state":"%s","failure":"boom",
       "counts":{"records":9,"encounters":3,"moments":8,"differing":2,"differences":{"score":2},
        "differingEncounters":[{"encounter":"V-1"}],"plansMissing":["V-2"]}}
      """;

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private final List<String> asked = new ArrayList<>();
  private HttpServer server;
  private volatile String ended = "finished";

  @BeforeEach
  void listen() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext("/api/rescores", this::answer);
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  private void answer(HttpExchange exchange) throws IOException {
    var body = new String(exchange.getRequestBody().readAllBytes(), UTF_8);
    var path = exchange.getRequestURI().getPath();
    asked.add(exchange.getRequestMethod() + " " + path + " " + body);
    var answer =
        path.endsWith("/differences")
            ? "encounter,what\r\n"
            : VIEW.formatted(
                path.equals("/api/rescores") ? "running" : path.endsWith("t") ? "adopted" : ended);
    exchange.sendResponseHeaders(200, answer.getBytes(UTF_8).length);
    exchange.getResponseBody().write(answer.getBytes(UTF_8));
    exchange.close();
  }

  private int run(String... line) {
    return Commands.line(new PrintWriter(out, true), new PrintWriter(err, true)).execute(line);
  }

  private int attempt() throws IOException {
    var policy = Files.writeString(folder.resolve("policy.yaml"), "version: tried");
    var score = Files.writeString(folder.resolve("score.yaml"), "id: own");
    return run(
        "rescore",
        "try",
        "--server=http://127.0.0.1:" + server.getAddress().getPort(),
        "--from=2026-01-05T08:00:00Z",
        "--policy=" + policy,
        "--score=" + score,
        "--out=" + folder.resolve("differences.csv"));
  }

  @Test
  void shouldSendTheFilesReportAndKeepTheTable() throws IOException {
    assertThat(attempt()).isZero();

    assertThat(asked.get(0))
        .isEqualTo(
            "POST /api/rescores {\"from\":\"2026-01-05T08:00:00Z\",\"policy\":\"version: tried\","
                + "\"scores\":[\"id: own\"]}");
    assertThat(out.toString())
        .contains("9 records, 3 encounters, 8 moments; 2 of them are judged otherwise")
        .contains("score: 2")
        .contains("Of 1 encounters an earlier care plan")
        .contains("rescore adopt R-1");
    assertThat(folder.resolve("differences.csv")).hasContent("encounter,what");
  }

  @Test
  void shouldFailWhenTheReScoringFailed() throws IOException {
    ended = "failed";

    assertThat(attempt()).isEqualTo(1);
    assertThat(out.toString()).contains("Failed: boom");
  }

  @Test
  void shouldAdopt() {
    var address = "--server=http://127.0.0.1:" + server.getAddress().getPort();

    assertThat(run("rescore", "adopt", address, "R-1")).isZero();
    assertThat(asked).containsExactly("POST /api/rescores/R-1/adopt {}");
    assertThat(out.toString()).contains("Adopted: tried, in force for what was taken from 2026");
  }
}
