package org.driftward.alerts.core.trigger;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import java.util.stream.Stream;
import org.driftward.alerts.core.policy.Recovery;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * What the sets of one encounter add up to, as of each of the newest few, oldest first. A set that
 * is corrected or retracted takes its tally with it, so that only the sets that count are counted;
 * however many sets there are, the memory does not grow.
 */
public record Recent(List<Tally> tallies) {

  public static final Recent NOTHING = new Recent(List.of());

  /**
   * How many of the newest sets can be taken back at once without counting from the start again.
   */
  private static final int KEPT = 6;

  public Recent {
    tallies = List.copyOf(tallies);
  }

  /** What was remembered before the set of {@code time}. */
  public Recent before(Instant time) {
    return new Recent(tallies.stream().filter(tally -> tally.set().isBefore(time)).toList());
  }

  /**
   * @throws IllegalArgumentException if the mark is not the newest
   */
  public Recent plus(Mark mark) {
    @Nullable Tally last = last();
    if (last != null && !last.set().isBefore(mark.set())) {
      throw new IllegalArgumentException("the set of " + mark.set() + " is not the newest");
    }
    var all = new ArrayList<>(tallies);
    all.add(Tally.after(last, mark));
    return new Recent(all.subList(Math.max(0, all.size() - KEPT), all.size()));
  }

  /**
   * The same rules are met anew, by something else than a set: what recovery there was does not
   * count for them.
   */
  public Recent meeting(Set<String> rules) {
    return new Recent(tallies.stream().map(tally -> tally.meeting(rules)).toList());
  }

  /** Clinical time of the newest set, or null before the first. */
  public @Nullable Instant newest() {
    @Nullable Tally last = last();
    return last == null ? null : last.set();
  }

  /** In how many sets running the series has been far from the patient's baseline. */
  int drifting(String series) {
    @Nullable Tally last = last();
    return last == null ? 0 : last.drifting().getOrDefault(series, 0);
  }

  /** How many sets running lacked core observations. */
  int partial() {
    @Nullable Tally last = last();
    return last == null ? 0 : last.partial();
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
    @Nullable Tally last = last();
    if (last == null) {
      return false;
    }
    @Nullable Run run = last.below(rule).of(level);
    return run != null && run.lasts(recovery, last.set());
  }

  private @Nullable Tally last() {
    return tallies.isEmpty() ? null : tallies.get(tallies.size() - 1);
  }
}
