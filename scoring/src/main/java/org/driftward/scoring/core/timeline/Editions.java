package org.driftward.scoring.core.timeline;

import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.ConcurrentHashMap;

/**
 * The first judge, which is in office from the beginning of time, and the editions adopted since,
 * in the order of their adoption. All are kept: what was taken before an edition's time is judged
 * as it always was, and an encounter that has not adopted the newest edition yet can still be told
 * from one that has. Immutable and thread-safe.
 */
public final class Editions {

  private final Judge first;
  private final List<Edition> adopted;
  private final List<String> versions;
  private final Map<String, Edition> byVersion = new HashMap<>();
  private final Map<List<String>, Rules> rules = new ConcurrentHashMap<>();

  private Editions(Judge first, List<Edition> adopted) {
    this.first = Objects.requireNonNull(first, "first");
    this.adopted = List.copyOf(adopted);
    this.versions = this.adopted.stream().map(Edition::version).toList();
    for (var edition : this.adopted) {
      if (edition.version().equals(first.version())
          || byVersion.put(edition.version(), edition) != null) {
        throw new IllegalArgumentException(
            "the version " + edition.version() + " is that of another edition");
      }
    }
  }

  /** Of one judge for all times. */
  public static Editions only(Judge judge) {
    return new Editions(judge, List.of());
  }

  /**
   * These and one more, adopted now.
   *
   * @throws IllegalArgumentException if the version is taken
   */
  public Editions with(Edition edition) {
    var more = new ArrayList<>(adopted);
    more.add(edition);
    return new Editions(first, more);
  }

  /** Versions of the adopted editions, oldest adoption first. */
  public List<String> versions() {
    return versions;
  }

  /** Whether the version names the first judge or an adopted edition. */
  public boolean knows(String version) {
    return version.equals(first.version()) || byVersion.containsKey(version);
  }

  /** What an encounter that has adopted these versions is judged by. */
  Rules rules(List<String> some) {
    return rules.computeIfAbsent(some, this::choose);
  }

  /** The earliest time from which adopting the editions that {@code some} lacks may matter. */
  Instant missingFrom(List<String> some) {
    return adopted.stream()
        .filter(edition -> !some.contains(edition.version()))
        .map(Edition::from)
        .min(Instant::compareTo)
        .orElse(Instant.MAX);
  }

  private Rules choose(List<String> some) {
    var chosen = new ArrayList<Edition>();
    for (var version : some) {
      var edition = byVersion.get(version);
      if (edition == null) {
        throw new UnknownEditionException(version);
      }
      chosen.add(edition);
    }
    return takenAt -> {
      for (int i = chosen.size() - 1; i >= 0; i--) {
        if (!chosen.get(i).from().isAfter(takenAt)) {
          return chosen.get(i).judge();
        }
      }
      return first;
    };
  }

  /** An edition that somebody has adopted and that has not been heard of here yet. */
  public static final class UnknownEditionException extends IllegalStateException {
    private static final long serialVersionUID = 1L;

    UnknownEditionException(String version) {
      super("edition " + version + " is not known here yet");
    }
  }
}
