package org.driftward.deploy.bench;

import com.fasterxml.jackson.databind.JsonNode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Objects;
import java.util.TreeMap;

/**
 * Counts what was found against what was to be found. Expected, optional, and never (a dangerous
 * reading); everything else is wrong. Where all of {@code accept} was found, it stands for {@code
 * insteadOf}. Quantities are compared with a tolerance of 0.06, since conversions are rounded.
 */
final class NarrativeTally {

  private static final double TOLERANCE = 0.06;
  private static final List<String> VALUES = List.of("value", "grade", "coded", "text");

  /** Of one text or one finding. */
  private static final class Count {
    private int expected;
    private int found;
    private int wrong;
    private int never;

    private String row(String name) {
      return String.format(
          Locale.ROOT, "| %s | %d | %d | %d | %d |%n", name, expected, found, wrong, never);
    }
  }

  private final Map<String, Count> byText = new TreeMap<>();
  private final Map<String, Count> byCode = new TreeMap<>();
  private final Count all = new Count();

  void add(JsonNode text, JsonNode findings) {
    var id = text.get("id").asText();
    byText.computeIfAbsent(id, known -> new Count());
    var expected = expected(text, findings);
    for (var finding : findings) {
      if (in(expected, finding) || in(text.path("optional"), finding)) {
        continue;
      }
      boolean dangerous = false;
      for (var never : text.path("never")) {
        dangerous |= hits(never, finding);
      }
      for (var count : counts(id, finding)) {
        count.wrong += dangerous ? 0 : 1;
        count.never += dangerous ? 1 : 0;
      }
    }
    for (var finding : expected) {
      boolean found = in(findings, finding);
      for (var count : counts(id, finding)) {
        count.expected++;
        count.found += found ? 1 : 0;
      }
    }
  }

  String table() {
    var table = new StringBuilder("| | expected | found | wrong | never |\n");
    table.append("| --- | --- | --- | --- | --- |\n");
    byText.forEach((id, count) -> table.append(count.row(id)));
    byCode.forEach((code, count) -> table.append(count.row(code)));
    return table
        .append(all.row("all"))
        .append(String.format(Locale.ROOT, "%nfound: %.1f %%%n", 100.0 * all.found / all.expected))
        .toString();
  }

  private List<Count> counts(String id, JsonNode finding) {
    var code = byCode.computeIfAbsent(finding.get("code").asText(), known -> new Count());
    return List.of(byText.get(id), code, all);
  }

  private static List<JsonNode> expected(JsonNode text, JsonNode findings) {
    var expected = new ArrayList<JsonNode>();
    text.get("expect").forEach(expected::add);
    for (var alternative : text.path("alternatives")) {
      boolean whole = true;
      for (var accepted : alternative.get("accept")) {
        whole &= in(findings, accepted);
      }
      if (whole) {
        var instead = alternative.get("insteadOf");
        expected.removeIf(known -> in(instead, known) && !in(findings, known));
        alternative.get("accept").forEach(expected::add);
      }
    }
    return expected;
  }

  private static boolean in(Iterable<JsonNode> list, JsonNode finding) {
    for (var known : list) {
      if (same(known, finding)) {
        return true;
      }
    }
    return false;
  }

  private static boolean same(JsonNode one, JsonNode other) {
    if (!sameField(one, other, "code", "site", "side")) {
      return false;
    }
    if (one.has("text") || other.has("text")) {
      return true;
    }
    if (one.has("value") || other.has("value")) {
      return one.has("value")
          && other.has("value")
          && sameField(one, other, "unit")
          && Math.abs(one.get("value").asDouble() - other.get("value").asDouble()) <= TOLERANCE;
    }
    return sameField(one, other, "grade", "coded");
  }

  private static boolean hits(JsonNode never, JsonNode finding) {
    if (VALUES.stream().anyMatch(never::has)) {
      return same(never, finding);
    }
    return sameField(never, finding, "code")
        && (!never.has("site") || sameField(never, finding, "site"))
        && (!never.has("side") || sameField(never, finding, "side"));
  }

  private static boolean sameField(JsonNode one, JsonNode other, String... fields) {
    for (var field : fields) {
      if (!Objects.equals(one.path(field).asText(), other.path(field).asText())) {
        return false;
      }
    }
    return true;
  }
}
