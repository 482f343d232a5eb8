package org.driftward.alerts.core.episode;

import java.time.Duration;
import java.time.Instant;
import java.util.TreeMap;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * A second, naive account of how the total of a score opens, holds and leaves an episode: every set
 * ever seen, looked through from the start each time. Written from the rules in {@code
 * docs/episodes.md}, not from the code.
 */
final class ReferenceScore {

  private final TreeMap<Instant, Integer> sets = new TreeMap<>();
  private @Nullable Level level;
  private @Nullable Level seen;
  private @Nullable Level quietFor;
  private Instant quietUntil = Instant.MIN;

  /** The level at which the total holds the episode, or null. */
  @Nullable Level level() {
    return level;
  }

  /**
   * The newest picture; sets at its time and later no longer exist.
   *
   * @param running whether there is an episode
   */
  void picture(Instant set, int total, boolean running, Instant now) {
    sets.tailMap(set, true).clear();
    sets.put(set, total);
    var reached = reached(total);
    if (!running) {
      boolean quiet = now.isBefore(quietUntil) && reached != null && notAbove(reached, quietFor);
      boolean backEntry = set.plus(Duration.ofHours(6)).isBefore(now);
      level = quiet || backEntry ? null : reached;
      return;
    }
    var standing = level;
    while (standing != null && below(standing)) {
      standing = lower(standing);
    }
    level = higher(reached, standing);
  }

  void attended() {
    seen = level == null ? seen : level;
  }

  void over(boolean byPerson, Instant until) {
    if (byPerson) {
      quietFor = level == null ? seen : level;
      quietUntil = until;
    }
    level = null;
    seen = null;
  }

  void opened() {
    quietUntil = Instant.MIN;
  }

  /** Two sets running below it, the first of them an hour before the newest. */
  private boolean below(Level standing) {
    int running = 0;
    @Nullable Instant first = null;
    for (var set : sets.descendingMap().entrySet()) {
      var reached = reached(set.getValue());
      if (reached != null && reached.compareTo(standing) >= 0) {
        break;
      }
      running++;
      first = set.getKey();
    }
    return running >= 2 && first != null && !first.plusSeconds(3600).isAfter(sets.lastKey());
  }

  private static @Nullable Level reached(int total) {
    return total >= 7 ? Level.HIGH : total >= 5 ? Level.MEDIUM : null;
  }

  private static @Nullable Level lower(Level level) {
    return level == Level.HIGH ? Level.MEDIUM : level == Level.MEDIUM ? Level.LOW : null;
  }

  private static boolean notAbove(Level one, @Nullable Level other) {
    return other != null && one.compareTo(other) <= 0;
  }

  private static @Nullable Level higher(@Nullable Level one, @Nullable Level other) {
    if (one == null || other == null) {
      return one == null ? other : one;
    }
    return one.compareTo(other) >= 0 ? one : other;
  }
}
