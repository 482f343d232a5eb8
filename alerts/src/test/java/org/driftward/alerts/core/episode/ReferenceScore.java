package org.driftward.alerts.core.episode;

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
  private @Nullable Instant first;
  private @Nullable Instant last;
  private int quietFor = -1;
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
      boolean quiet = now.isBefore(quietUntil) && total <= quietFor;
      level = quiet ? null : reached;
    } else if (set.equals(first) && set.equals(last) && !reaches(reached, level)) {
      // Only this set ever gave it, and it was corrected.
      level = reached;
    } else {
      var standing = level;
      while (standing != null && below(standing)) {
        standing = lower(standing);
      }
      level = higher(reached, standing);
    }
    witness(set, reached);
  }

  private void witness(Instant set, @Nullable Level reached) {
    if (level == null) {
      first = null;
      last = null;
    } else if (reached != null) {
      first = first == null ? set : first;
      last = set;
    }
  }

  /** A set was a mistake: what it alone gave goes with it. */
  void withdrawn(Instant set) {
    if (set.equals(sets.isEmpty() ? null : sets.lastKey())) {
      quietUntil = Instant.MIN;
    }
    if (set.equals(first) && set.equals(last)) {
      level = null;
      first = null;
      last = null;
    } else if (set.equals(first)) {
      first = last;
    } else if (set.equals(last)) {
      last = first;
    }
  }

  void over(boolean byPerson, Instant until) {
    if (byPerson) {
      int newest = sets.isEmpty() ? 0 : sets.lastEntry().getValue();
      quietFor = level != null && reached(newest) != null ? newest : -1;
      quietUntil = until;
    }
    level = null;
    first = null;
    last = null;
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

  private static boolean reaches(@Nullable Level one, @Nullable Level other) {
    return other == null || (one != null && one.compareTo(other) >= 0);
  }

  private static @Nullable Level higher(@Nullable Level one, @Nullable Level other) {
    if (one == null || other == null) {
      return one == null ? other : one;
    }
    return one.compareTo(other) >= 0 ? one : other;
  }
}
