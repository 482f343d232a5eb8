package org.driftward.ingest.json;

import java.io.IOException;
import org.jspecify.annotations.Nullable;

/**
 * The last few values that a thread turned into something, each in the one place its hash gives it.
 * A record repeats few moments many times, and making or reading the text of one is slow.
 *
 * @param <K> compared by {@code equals}
 */
final class RecentTexts<K, V> {

  private static final int PLACES = 32;

  private final ThreadLocal<@Nullable Object[]> recent =
      ThreadLocal.withInitial(() -> new @Nullable Object[2 * PLACES]);

  /** Makes one from the other. */
  @FunctionalInterface
  interface Making<K, V> {
    V of(K key) throws IOException;
  }

  /** What {@code make} gives for {@code key}, now or a moment ago. */
  V get(K key, Making<K, V> make) throws IOException {
    var places = recent.get();
    int hash = key.hashCode() * 0x9E3779B9;
    int at = 2 * (hash >>> 27);
    if (key.equals(places[at])) {
      @SuppressWarnings("unchecked") // Only a value of K's stands beside a K.
      V known = (V) places[at + 1];
      return known;
    }
    V made = make.of(key);
    places[at] = key;
    places[at + 1] = made;
    return made;
  }
}
