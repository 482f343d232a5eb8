package org.driftward.ingest.contract;

import java.io.IOException;
import java.util.concurrent.atomic.AtomicReferenceArray;
import org.jspecify.annotations.Nullable;

/**
 * What was made last out of something, each in the one place its hash gives it: records repeat few
 * moments and numbers many times, and making or reading the text of one is slow. Thread-safe.
 *
 * @param <K> immutable, compared by {@code equals}
 * @param <V> immutable
 */
public final class Recent<K, V> {

  private final int shift;
  private final AtomicReferenceArray<@Nullable Made<K, V>> places;

  private record Made<K, V>(K from, V what) {}

  /**
   * @param bits for {@code 1 << bits} places, 1 to 16
   */
  public Recent(int bits) {
    if (bits < 1 || bits > 16) {
      throw new IllegalArgumentException("2 to the power of " + bits + " places");
    }
    this.shift = Integer.SIZE - bits;
    this.places = new AtomicReferenceArray<>(1 << bits);
  }

  /** Makes one from the other. */
  @FunctionalInterface
  public interface Making<K, V> {
    V of(K key) throws IOException;
  }

  /** What {@code make} gives for {@code key}, now or a moment ago; its failures are not kept. */
  public V get(K key, Making<K, V> make) throws IOException {
    int place = (key.hashCode() * 0x9E3779B9) >>> shift;
    var before = places.get(place);
    if (before != null && before.from.equals(key)) {
      return before.what;
    }
    var made = make.of(key);
    places.lazySet(place, new Made<>(key, made));
    return made;
  }
}
