package org.driftward.deploy.command;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.util.Base64;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class CommandsTest {

  private static final String SOUND = "{\"sound\":true,\"entries\":12,\"head\":\"abc\"}";

  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private HttpServer server;
  private volatile int status = 200;
  private volatile String answer = SOUND;

  @BeforeEach
  void listen() throws IOException {
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    server.createContext(
        "/api/journal/check",
        exchange -> {
          var expected = Base64.getEncoder().encodeToString("eve:pass word".getBytes(UTF_8));
          var known =
              ("Basic " + expected).equals(exchange.getRequestHeaders().getFirst("Authorization"));
          var body = answer.getBytes(UTF_8);
          exchange.sendResponseHeaders(known ? status : 401, body.length);
          exchange.getResponseBody().write(body);
          exchange.close();
        });
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  @Test
  void shouldSayThatTheJournalIsSound() {
    assertThat(check("--user", "eve", "--password=pass word")).isZero();
    assertThat(out.toString()).contains("Sound: 12 entries, head abc");
  }

  @Test
  void shouldFailWhenTheJournalIsNotSound() {
    answer = "{\"sound\":false,\"entries\":12,\"fault\":\"entry 7 was altered\",\"at\":7}";

    assertThat(check("--user", "eve", "--password=pass word")).isEqualTo(1);
    assertThat(out.toString()).contains("entry 7 was altered");
  }

  @Test
  void shouldSayThatTheAccountIsUnknown() {
    assertThat(check("--user", "eve", "--password=wrong")).isEqualTo(1);
    assertThat(err.toString()).contains("does not know this account");
  }

  @Test
  void shouldPassOnWhatTheServerSays() {
    status = 503;
    answer = "no database";

    assertThat(check("--user", "eve", "--password=pass word")).isEqualTo(1);
    assertThat(err.toString()).contains("503").contains("no database");
  }

  @Test
  void shouldSayThatNobodyListens() {
    var nobody = server.getAddress().getPort();
    server.stop(0);

    assertThat(run("journal", "check", "--server", "http://127.0.0.1:" + nobody)).isEqualTo(1);
    assertThat(err.toString()).contains("No server answers at");
  }

  @Test
  void shouldRefuseAnUnknownCommand() {
    assertThat(run("jurnal")).isEqualTo(2);
    assertThat(err.toString()).contains("jurnal");
  }

  private int check(String... more) {
    var line = new String[more.length + 4];
    line[0] = "journal";
    line[1] = "check";
    line[2] = "--server";
    line[3] = "http://127.0.0.1:" + server.getAddress().getPort();
    System.arraycopy(more, 0, line, 4, more.length);
    return run(line);
  }

  private int run(String... line) {
    return Commands.line(new PrintWriter(out, true), new PrintWriter(err, true)).execute(line);
  }
}
