package org.driftward.alerts.core.journal;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.Map;
import java.util.TreeMap;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * Writes JSON of which there is only one: members sorted by name, no white space, strings escaped
 * as RFC 8785 says, absent values left out. Numbers are whole or plain decimals; unlike RFC 8785
 * they are not binary floating point, so that a value is kept as it was given.
 */
public final class CanonicalJson {

  private final StringBuilder out = new StringBuilder();

  private CanonicalJson() {}

  /**
   * @param value a map, a collection, text, a whole number or {@link BigDecimal}, a boolean, a
   *     time, a duration or a {@link Word}
   * @throws IllegalArgumentException naming the type that it cannot write
   */
  public static String write(Object value) {
    var json = new CanonicalJson();
    json.value(value);
    return json.out.toString();
  }

  private void value(Object value) {
    if (value instanceof Map<?, ?> map) {
      object(map);
    } else if (value instanceof Collection<?> list) {
      array(list);
    } else if (value instanceof BigDecimal number) {
      out.append(number.stripTrailingZeros().toPlainString());
    } else if (value instanceof Long || value instanceof Integer || value instanceof Boolean) {
      out.append(value);
    } else if (value instanceof Word word) {
      string(word.word());
    } else if (value instanceof CharSequence || isTime(value)) {
      string(value.toString());
    } else {
      throw new IllegalArgumentException("no canonical JSON for " + value.getClass().getName());
    }
  }

  private static boolean isTime(Object value) {
    return value instanceof Instant || value instanceof Duration;
  }

  private void object(Map<?, ?> map) {
    var sorted = new TreeMap<String, Object>();
    map.forEach(
        (name, member) -> {
          if (present(member)) {
            sorted.put((String) name, member);
          }
        });
    out.append('{');
    var comma = "";
    for (var member : sorted.entrySet()) {
      out.append(comma);
      string(member.getKey());
      out.append(':');
      value(member.getValue());
      comma = ",";
    }
    out.append('}');
  }

  private static boolean present(@Nullable Object member) {
    return member != null;
  }

  private void array(Collection<?> list) {
    out.append('[');
    var comma = "";
    for (var element : list) {
      out.append(comma);
      value(element);
      comma = ",";
    }
    out.append(']');
  }

  private void string(String text) {
    out.append('"');
    for (int i = 0; i < text.length(); i++) {
      char c = text.charAt(i);
      switch (c) {
        case '"' -> out.append("\\\"");
        case '\\' -> out.append("\\\\");
        case '\b' -> out.append("\\b");
        case '\t' -> out.append("\\t");
        case '\n' -> out.append("\\n");
        case '\f' -> out.append("\\f");
        case '\r' -> out.append("\\r");
        default -> plain(c);
      }
    }
    out.append('"');
  }

  private void plain(char c) {
    if (c < ' ') {
      out.append("\\u%04x".formatted((int) c));
    } else {
      out.append(c);
    }
  }
}
