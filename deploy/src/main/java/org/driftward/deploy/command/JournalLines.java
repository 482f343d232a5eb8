package org.driftward.deploy.command;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Consumer;
import org.driftward.alerts.contract.Journal.Anchor;
import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.JsonFormat.MalformedException;

/** Entries and anchors, one JSON object on each line; memory stays flat however many there are. */
final class JournalLines {

  private static final JsonFormat<Entry> ENTRY = JsonFormat.of(Entry.class);
  private static final JsonFormat<Anchor> ANCHOR = JsonFormat.of(Anchor.class);

  private JournalLines() {}

  /**
   * @throws IOException naming the first line that is no entry
   */
  static void entries(InputStream lines, Consumer<Entry> taker) throws IOException {
    read(lines, ENTRY, "entry of a journal", taker);
  }

  static List<Anchor> anchors(Path file) throws IOException {
    var anchors = new ArrayList<Anchor>();
    try (var lines = Files.newInputStream(file)) {
      read(lines, ANCHOR, "anchor", anchors::add);
    }
    return anchors;
  }

  static Entry entry(String json) {
    return ENTRY.read(json.getBytes(UTF_8));
  }

  static String line(Anchor anchor) {
    return new String(ANCHOR.write(anchor), UTF_8) + "\n";
  }

  private static <T> void read(InputStream in, JsonFormat<T> format, String what, Consumer<T> taker)
      throws IOException {
    var reader = new BufferedReader(new InputStreamReader(in, UTF_8));
    int number = 0;
    for (var line = reader.readLine(); line != null; line = reader.readLine()) {
      number++;
      if (!line.isBlank()) {
        taker.accept(parsed(line, format, what, number));
      }
    }
  }

  private static <T> T parsed(String line, JsonFormat<T> format, String what, int number)
      throws IOException {
    try {
      return format.read(line.getBytes(UTF_8));
    } catch (MalformedException | IllegalArgumentException e) {
      throw new IOException("line " + number + " is no " + what, e);
    }
  }
}
