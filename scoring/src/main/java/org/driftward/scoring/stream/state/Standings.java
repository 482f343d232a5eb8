package org.driftward.scoring.stream.state;

import java.util.LinkedHashMap;
import java.util.Map;
import java.util.function.Supplier;
import org.apache.kafka.common.utils.Bytes;
import org.driftward.scoring.core.timeline.Facts;
import org.driftward.scoring.core.timeline.Head;
import org.driftward.scoring.core.timeline.Moment;
import org.driftward.scoring.core.timeline.Timeline;
import org.jspecify.annotations.Nullable;

/**
 * Where the encounters of a task stand, as far as they are remembered: those seen last as they are,
 * some more as the bytes of a checkpoint, the others not at all. Used by the task's thread alone.
 *
 * <p>Bytes are a sixth of the size and are read again in a fraction of the time that folding the
 * history since the last checkpoint takes, so an assessment costs about the same however many
 * encounters take turns.
 */
final class Standings {

  private final HeadCode code;
  private final Supplier<Timeline> timeline;
  private final Map<String, Remembered> whole;
  private final Map<String, Packed> packed;

  Standings(HeadCode code, Supplier<Timeline> timeline, Memory memory) {
    this.code = code;
    this.timeline = timeline;
    this.packed = new Recent<>(memory.packed(), (encounter, one) -> {});
    this.whole = new Recent<>(memory.whole(), (encounter, one) -> packed.put(encounter, pack(one)));
  }

  /**
   * A standing as bytes.
   *
   * @param at of the head, which the bytes do not hold
   * @param head null for that of an encounter without assessments
   */
  private record Packed(
      Facts facts, long sequence, @Nullable Moment at, @Nullable Bytes head, KnownIds ids) {}

  /** Null where nothing is remembered. */
  @Nullable Remembered find(String encounter) {
    var known = whole.get(encounter);
    if (known != null) {
      return known;
    }
    var bytes = packed.remove(encounter);
    return bytes == null ? null : unpack(encounter, bytes);
  }

  void remember(Remembered one) {
    whole.put(one.standing().encounter(), one);
  }

  private Packed pack(Remembered one) {
    var standing = one.standing();
    var head = standing.head();
    var bytes = head.at() == null ? null : Bytes.wrap(code.write(head));
    return new Packed(standing.facts(), standing.sequence(), head.at(), bytes, one.ids());
  }

  private Remembered unpack(String encounter, Packed bytes) {
    var head =
        bytes.at() == null || bytes.head() == null
            ? Head.EMPTY
            : code.read(bytes.at(), bytes.head().get());
    var standing = timeline.get().resume(encounter, bytes.facts(), bytes.sequence(), head);
    return new Remembered(standing, bytes.ids());
  }

  /** The last so many that were put or looked up. */
  private static final class Recent<V> extends LinkedHashMap<String, V> {
    private static final long serialVersionUID = 1L;

    private final int most;
    private final transient Forgotten<V> forgotten;

    Recent(int most, Forgotten<V> forgotten) {
      super(16, 0.75f, true);
      this.most = most;
      this.forgotten = forgotten;
    }

    @Override
    protected boolean removeEldestEntry(Map.Entry<String, V> eldest) {
      if (size() <= most) {
        return false;
      }
      forgotten.told(eldest.getKey(), eldest.getValue());
      return true;
    }
  }

  /** Hears what had to make room. */
  @FunctionalInterface
  private interface Forgotten<V> {
    void told(String encounter, V value);
  }
}
