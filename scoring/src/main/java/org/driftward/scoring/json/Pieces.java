package org.driftward.scoring.json;

import com.fasterxml.jackson.core.io.JsonStringEncoder;
import com.fasterxml.jackson.core.io.SerializedString;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * Runs of JSON that are the same in very many records, because all they say comes from a
 * definition, a policy or the catalogue: put together once and copied from then on. Thread-safe.
 *
 * @param <K> what the run says
 * @param <V> the run, or several
 */
final class Pieces<K, V> {

  /** More than the definitions of a house hold; runs beyond are put together each time. */
  private static final int MOST = 10_000;

  private final Map<K, V> known = new ConcurrentHashMap<>();
  private final Function<K, V> making;

  Pieces(Function<K, V> making) {
    this.making = making;
  }

  V of(K key) {
    var before = known.get(key);
    if (before != null) {
      return before;
    }
    var made = making.apply(key);
    if (known.size() < MOST) {
      known.put(key, made);
    }
    return made;
  }

  /** Its bytes are kept from the first copy on. */
  static SerializedString run(String json) {
    return new SerializedString(json);
  }

  /** As a JSON string, with its quotation marks. */
  static String quoted(String text) {
    return '"' + new String(JsonStringEncoder.getInstance().quoteAsString(text)) + '"';
  }

  /** A comma, the name and the text; nothing where there is no text. */
  static String field(String name, @Nullable String text) {
    return text == null ? "" : ",\"" + name + "\":" + quoted(text);
  }
}
