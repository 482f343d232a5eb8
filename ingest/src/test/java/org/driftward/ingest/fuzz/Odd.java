package org.driftward.ingest.fuzz;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.node.JsonNodeFactory;
import java.math.BigDecimal;
import java.util.List;
import java.util.Random;

/** Values that nobody expects in the place where they stand. */
final class Odd {

  private static final JsonNodeFactory JSON = JsonNodeFactory.instance;

  private static final List<String> TEXTS =
      List.of(
          "",
          " ",
          "\u0000",
          "null",
          "\uD800",
          "🫀",
          "a\nb",
          "V-2",
          "P-2",
          "final",
          "entered-in-error",
          "corrected",
          "batch",
          "collection",
          "2031-03-02",
          "2031-03-02T05:00",
          "2031-03-02T05:00:00Z",
          "2031-13-40T99:00:00Z",
          "9999-12-31T23:59:59.999999999Z",
          "0001-01-01T00:00:00+14:00",
          "-999999999-01-01T00:00:00Z",
          "http://loinc.org",
          "8480-6",
          "85354-9",
          "[degF]",
          "kPa",
          "Cel",
          "m/(s.",
          "10*-999999999",
          "1e999999999",
          "-1e-999999999",
          "urn:uuid:0c3151bd-1cbf-4d64-b04d-cd9187a4c6e0",
          "#m1",
          "Patient?identifier=a|b",
          "../../Patient/1",
          "{}",
          "<b/>",
          "&amp;",
          "%00%zz",
          "x".repeat(5_000));

  private static final List<String> NUMBERS =
      List.of(
          "0",
          "-1",
          "1",
          "39.2",
          "1e400",
          "-1e-400",
          "1e999999999",
          "9223372036854775808",
          "0.1000000000000000000000000000000000000001",
          "2147483648");

  private Odd() {}

  static String text(Random random) {
    return TEXTS.get(random.nextInt(TEXTS.size()));
  }

  static JsonNode value(Random random) {
    return switch (random.nextInt(8)) {
      case 0 -> JSON.nullNode();
      case 1 -> JSON.booleanNode(random.nextBoolean());
      case 2 -> JSON.arrayNode();
      case 3 -> JSON.objectNode();
      case 4 -> nested(random.nextInt(60));
      case 5, 6 -> JSON.textNode(text(random));
      default -> JSON.numberNode(new BigDecimal(NUMBERS.get(random.nextInt(NUMBERS.size()))));
    };
  }

  private static JsonNode nested(int depth) {
    JsonNode node = JSON.textNode("deep");
    for (int i = 0; i < depth; i++) {
      node = i % 2 == 0 ? JSON.arrayNode().add(node) : JSON.objectNode().set("extension", node);
    }
    return node;
  }
}
