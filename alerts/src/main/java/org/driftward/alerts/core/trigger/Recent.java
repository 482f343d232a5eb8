package org.driftward.alerts.core.trigger;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.driftward.alerts.contract.Level;
import org.driftward.alerts.core.policy.Recovery;

/**
 * The newest sets of one encounter, oldest first, a bounded number of them. A corrected or
 * retracted set takes its mark with it, so the memory depends only on the sets that count.
 */
public record Recent(List<Mark> marks) {

  public static final Recent NOTHING = new Recent(List.of());

  private static final int KEPT = 24;

  public Recent {
    marks = List.copyOf(marks);
  }

  /** What was remembered before the set of {@code time}. */
  public Recent before(Instant time) {
    return new Recent(marks.stream().filter(mark -> mark.set().isBefore(time)).toList());
  }

  /**
   * @throws IllegalArgumentException if the mark is not the newest
   */
  public Recent plus(Mark mark) {
    if (!marks.isEmpty() && !marks.get(marks.size() - 1).set().isBefore(mark.set())) {
      throw new IllegalArgumentException("the set of " + mark.set() + " is not the newest");
    }
    var all = new ArrayList<>(marks);
    all.add(mark);
    if (all.size() > KEPT) {
      all.remove(dispensable(all));
    }
    return new Recent(all);
  }

  /** How many of the newest sets running fulfil the condition. */
  int running(Predicate<Mark> condition) {
    int count = 0;
    while (count < marks.size() && condition.test(marks.get(marks.size() - 1 - count))) {
      count++;
    }
    return count;
  }

  /**
   * The level at which a rule still stands, judged by what may have been reached and how long ago.
   *
   * @return empty when the recovery below every level has lasted
   */
  public Optional<Level> standing(String rule, Level from, Recovery recovery) {
    return Stream.of(Level.HIGH, Level.MEDIUM, Level.LOW)
        .filter(level -> level.compareTo(from) <= 0)
        .filter(level -> !recovered(rule, level, recovery))
        .findFirst();
  }

  private boolean recovered(String rule, Level level, Recovery recovery) {
    int below = running(mark -> !mark.reaches(rule, level));
    if (below < recovery.sets()) {
      return false;
    }
    var first = marks.get(marks.size() - below).set();
    var newest = marks.get(marks.size() - 1).set();
    return !first.plus(recovery.lasting()).isAfter(newest);
  }

  /**
   * A mark between two like it says nothing more about how long a state has lasted; with sets every
   * minute it must be these that go, or no recovery would ever last long enough.
   */
  private static int dispensable(List<Mark> marks) {
    for (int i = 1; i < marks.size() - 1; i++) {
      if (marks.get(i).sameAs(marks.get(i - 1)) && marks.get(i).sameAs(marks.get(i + 1))) {
        return i;
      }
    }
    return 0;
  }
}
