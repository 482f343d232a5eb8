package org.driftward.deploy.command;

import static org.assertj.core.api.Assertions.assertThat;

import com.sun.net.httpserver.HttpServer;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Stream;
import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.alerts.contract.JournalChain;
import org.driftward.ingest.contract.JsonFormat;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** The journal's commands against a real HTTP server, and on files alone. */
class JournalCommandTest {

  private static final JsonFormat<Entry> FORMAT = JsonFormat.of(Entry.class);
  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");

  @TempDir Path folder;
  private final StringWriter out = new StringWriter();
  private final StringWriter err = new StringWriter();
  private final List<Entry> journal = new ArrayList<>();
  private HttpServer server;
  private Path file;
  private Path anchors;

  @BeforeEach
  void serve() throws IOException {
    file = folder.resolve("journal.ndjson");
    anchors = folder.resolve("anchors.ndjson");
    write(4, "as it was");
    server = HttpServer.create(new InetSocketAddress(InetAddress.getLoopbackAddress(), 0), 0);
    answer("/api/journal/export");
    answer("/api/journal/head");
    server.start();
  }

  @AfterEach
  void stop() {
    server.stop(0);
  }

  @Test
  void shouldExportAndCheckWithoutAServer() {
    assertThat(run("export", "--to", file.toString(), "--server", address())).isZero();
    server.stop(0);

    assertThat(run("check", "--file", file.toString())).isZero();
    assertThat(out.toString()).contains("Sound: 4 entries, head " + journal.get(3).hash());
  }

  @Test
  void shouldFindAJournalThatWasWrittenAnewSinceTheAnchor() {
    assertThat(run("anchor", "--to", anchors.toString(), "--server", address())).isZero();
    write(2, "after the fact");
    write(4, "after the fact");

    assertThat(run("check", "--server", address(), "--anchors", anchors.toString())).isEqualTo(1);
    assertThat(out.toString())
        .contains("Not sound: the chain was written anew: an entry from 1 to 4");
  }

  @Test
  void shouldMeetTheAnchorsOfAJournalThatGrew() {
    assertThat(run("anchor", "--to", anchors.toString(), "--server", address())).isZero();
    write(6, "as it was");
    assertThat(run("anchor", "--to", anchors.toString(), "--server", address())).isZero();

    assertThat(run("check", "--server", address(), "--anchors", anchors.toString())).isZero();
    assertThat(out.toString()).contains("2 anchors met");
  }

  @Test
  void shouldFindAJournalWrittenAnewTogetherWithItsAnchorsByTheKey() throws IOException {
    var key = folder.resolve("anchors.key");
    assertThat(run("key", "--to", key.toString())).isZero();
    var shown = key.resolveSibling("anchors.key.pub");
    assertThat(out.toString()).isEqualTo(Files.readString(shown));
    assertThat(run("key", "--to", key.toString())).as("a key is not replaced").isEqualTo(1);

    assertThat(anchor("--key", key.toString())).isZero();
    assertThat(check("--key", shown.toString())).isZero();
    assertThat(out.toString()).contains("1 anchors met, signed by this key", "entry 4 at");
    write(4, "after the fact");
    Files.delete(anchors);
    assertThat(anchor()).isZero();

    assertThat(check()).as("nothing but the key tells").isZero();
    assertThat(check("--key", shown.toString())).isEqualTo(1);
    assertThat(out.toString()).contains("Not sound: no anchor is signed");
  }

  private int anchor(String... more) {
    return run(with(more, "anchor", "--to", anchors.toString(), "--server", address()));
  }

  private int check(String... more) {
    return run(with(more, "check", "--anchors", anchors.toString(), "--server", address()));
  }

  private static String[] with(String[] more, String... first) {
    return Stream.concat(Stream.of(first), Stream.of(more)).toArray(String[]::new);
  }

  @Test
  void shouldNameTheEntryWhoseLinesWereSwapped() throws IOException {
    run("export", "--to", file.toString(), "--server", address());
    var lines = new ArrayList<>(Files.readAllLines(file));
    lines.add(1, lines.remove(2));
    Files.write(file, lines);

    assertThat(run("check", "--file", file.toString())).isEqualTo(1);
    assertThat(out.toString()).contains("Not sound: entry 2 was moved");
  }

  @Test
  void shouldNameTheEntryWhoseTextWasChanged() throws IOException {
    run("export", "--to", file.toString(), "--server", address());
    Files.writeString(file, Files.readString(file).replaceFirst("as it was", "as it wasn't"));

    assertThat(run("check", "--file", file.toString())).isEqualTo(1);
    assertThat(out.toString()).contains("Not sound: entry 1 was altered");
  }

  @Test
  void shouldNameALineThatIsNoEntry() throws IOException {
    Files.writeString(file, "nothing\n");

    assertThat(run("check", "--file", file.toString())).isEqualTo(1);
    assertThat(err.toString()).contains("line 1 is no entry of a journal");
  }

  private void write(int entries, String body) {
    journal.clear();
    var head = JournalChain.START;
    for (int i = 0; i < entries; i++) {
      var entry = JournalChain.next(i, head, NOW, "episode/E-1", "opened", "driftward", body);
      journal.add(entry);
      head = entry.hash();
    }
  }

  private void answer(String path) {
    server.createContext(
        path,
        exchange -> {
          var entries =
              path.endsWith("head") ? journal.subList(journal.size() - 1, journal.size()) : journal;
          var body = new StringBuilder();
          entries.forEach(
              entry ->
                  body.append(new String(FORMAT.write(entry), StandardCharsets.UTF_8))
                      .append('\n'));
          var bytes = body.toString().getBytes(StandardCharsets.UTF_8);
          exchange.sendResponseHeaders(200, bytes.length);
          exchange.getResponseBody().write(bytes);
          exchange.close();
        });
  }

  private String address() {
    return "http://127.0.0.1:" + server.getAddress().getPort();
  }

  private int run(String... arguments) {
    var line = new String[arguments.length + 1];
    line[0] = "journal";
    System.arraycopy(arguments, 0, line, 1, arguments.length);
    return Commands.line(new PrintWriter(out, true), new PrintWriter(err, true)).execute(line);
  }
}
