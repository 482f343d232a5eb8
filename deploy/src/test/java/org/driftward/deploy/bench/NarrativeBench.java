package org.driftward.deploy.bench;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.node.ObjectNode;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.Locale;
import java.util.concurrent.Callable;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.ingest.contract.NarrativeReader;
import picocli.CommandLine.Command;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/**
 * Reads texts of which the findings are known and prints how many were found, for each text and
 * each finding, and how fast. The rules of counting stand beside {@link NarrativeTally}.
 */
@Command(name = "narrative", description = "Findings in spoken and typed examinations.")
final class NarrativeBench implements Callable<Integer> {

  private static final ObjectMapper JSON = new ObjectMapper();
  private static final int WARM_UP = 200;
  private static final int MEASURED = 300;
  private static final int WORDS = 300;

  @Parameters(paramLabel = "TEXTS.jsonl", description = "A line each: id, text, expect, never …")
  private Path texts;

  @Option(names = "--found", description = "Writes what was found, a line for each text.")
  private Path found;

  @Override
  public Integer call() throws Exception {
    var reader = NarrativeReader.shipped();
    var tally = new NarrativeTally();
    var lines = new StringBuilder();
    var all = new StringBuilder();
    for (var line : Files.readAllLines(texts)) {
      var text = JSON.readTree(line);
      var said = text.get("text").asText();
      all.append(said).append(' ');
      var answer = JSON.createObjectNode().put("id", text.get("id").asText());
      var findings = answer.putArray("findings");
      reader.read(said).findings().forEach(heard -> findings.add(json(heard.finding())));
      lines.append(answer).append('\n');
      tally.add(text, findings);
    }
    if (found != null) {
      Files.writeString(found, lines);
    }
    System.out.print(tally.table());
    System.out.printf(
        Locale.ROOT,
        "%n%d words: median %.2f ms, slowest of %d %.2f ms%n",
        WORDS,
        timed(reader, words(all.toString()))[MEASURED / 2] / 1e6,
        MEASURED,
        timed(reader, words(all.toString()))[MEASURED - 1] / 1e6);
    return 0;
  }

  private static String words(String all) {
    var words = all.trim().split("\\s+", -1);
    var some = new StringBuilder();
    for (int i = 0; i < WORDS; i++) {
      some.append(words[i % words.length]).append(' ');
    }
    return some.toString();
  }

  private static long[] timed(NarrativeReader reader, String text) {
    for (int i = 0; i < WARM_UP; i++) {
      reader.read(text);
    }
    var nanos = new long[MEASURED];
    for (int i = 0; i < MEASURED; i++) {
      long begun = System.nanoTime();
      reader.read(text);
      nanos[i] = System.nanoTime() - begun;
    }
    Arrays.sort(nanos);
    return nanos;
  }

  private static JsonNode json(Finding finding) {
    ObjectNode node = JSON.createObjectNode().put("code", finding.code());
    if (finding.key().site() != null) {
      node.put("site", finding.key().site());
    }
    if (finding.key().side() != null) {
      node.put("side", finding.key().side().word());
    }
    if (finding.value() instanceof FindingValue.Quantity quantity) {
      return node.put("value", quantity.value()).put("unit", quantity.unit());
    }
    if (finding.value() instanceof FindingValue.Grade grade) {
      return node.put("grade", grade.grade());
    }
    return finding.value() instanceof FindingValue.Coded coded
        ? node.put("coded", coded.code())
        : node.put("text", finding.value().plain());
  }
}
