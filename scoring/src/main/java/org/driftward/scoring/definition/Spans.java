package org.driftward.scoring.definition;

import java.math.BigDecimal;
import org.driftward.scoring.core.score.Span;
import org.jspecify.annotations.Nullable;

/** Reads {@code from} or {@code above}, and {@code upto} or {@code below}, of one mapping. */
final class Spans {

  private Spans() {}

  static Span read(YamlMap map) {
    try {
      return new Span(
          end(map, "from", "above"), map.has("from"), end(map, "upto", "below"), map.has("upto"));
    } catch (IllegalArgumentException e) {
      throw map.fault(e.getMessage());
    }
  }

  /** The span as people write it. */
  static String text(Span span) {
    if (span.low() == null) {
      return span.high() == null ? "any" : high(span, span.high());
    }
    if (span.high() == null) {
      return span.lowIn()
          ? span.low().toPlainString() + " or more"
          : "above " + span.low().toPlainString();
    }
    if (span.lowIn() && span.highIn()) {
      return span.low().compareTo(span.high()) == 0
          ? span.low().toPlainString()
          : span.low().toPlainString() + " to " + span.high().toPlainString();
    }
    var low = span.lowIn() ? span.low().toPlainString() + " or more" : "above " + span.low();
    return low + " and " + high(span, span.high());
  }

  private static String high(Span span, BigDecimal high) {
    return span.highIn() ? high.toPlainString() + " or less" : "below " + high.toPlainString();
  }

  private static @Nullable BigDecimal end(YamlMap map, String closed, String open) {
    if (map.has(closed) && map.has(open)) {
      throw map.fault(open, "either " + closed + " or " + open);
    }
    if (map.has(closed)) {
      return map.number(closed);
    }
    return map.has(open) ? map.number(open) : null;
  }
}
