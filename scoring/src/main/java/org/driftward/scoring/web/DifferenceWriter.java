package org.driftward.scoring.web;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.io.IOException;
import java.io.OutputStream;
import java.util.Iterator;
import java.util.stream.Collectors;
import java.util.stream.Stream;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.scoring.core.compare.Difference;
import org.jspecify.annotations.Nullable;

/** Writes differences one by one: a report may be longer than the memory. */
@FunctionalInterface
interface DifferenceWriter {

  JsonFormat<Difference> FORMAT = JsonFormat.of(Difference.class);

  void write(Iterator<Difference> differences, OutputStream out) throws IOException;

  /** An array of objects. */
  static void json(Iterator<Difference> differences, OutputStream out) throws IOException {
    out.write('[');
    while (differences.hasNext()) {
      out.write(FORMAT.write(differences.next()));
      if (differences.hasNext()) {
        out.write(',');
      }
    }
    out.write(']');
  }

  /** RFC 4180, with a line of names first. */
  static void csv(Iterator<Difference> differences, OutputStream out) throws IOException {
    out.write("encounter,assessment,asOf,what,before,after\r\n".getBytes(UTF_8));
    while (differences.hasNext()) {
      var one = differences.next();
      var line =
          Stream.of(
                  one.encounter(),
                  one.assessment(),
                  one.asOf().toString(),
                  one.what(),
                  text(one.before()),
                  text(one.after()))
              .map(DifferenceWriter::cell)
              .collect(Collectors.joining(","));
      out.write((line + "\r\n").getBytes(UTF_8));
    }
  }

  private static String text(@Nullable String text) {
    return text == null ? "" : text;
  }

  /** A cell that a spreadsheet would run as a formula is led by an apostrophe. */
  private static String cell(String text) {
    boolean formula = !text.isEmpty() && "=+@".indexOf(text.charAt(0)) >= 0;
    var harmless = formula ? "'" + text : text;
    return harmless.matches("[^,\"\r\n]*") ? harmless : '"' + harmless.replace("\"", "\"\"") + '"';
  }
}
