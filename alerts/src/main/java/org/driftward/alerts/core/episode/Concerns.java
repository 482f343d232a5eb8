package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Predicate;
import org.driftward.alerts.core.policy.Recovery;
import org.driftward.alerts.core.trigger.Recent;
import org.driftward.alerts.core.trigger.Trigger;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/** How concerns join, rise, fall and leave. */
final class Concerns {

  private static final Comparator<Concern> GRAVEST_FIRST =
      Comparator.comparing(Concern::level)
          .reversed()
          .thenComparing(Concern::since)
          .thenComparing(Concern::rule);

  private Concerns() {}

  static List<Concern> of(List<Trigger> fired, Instant since) {
    return sorted(fired.stream().map(trigger -> Concern.of(trigger, since)).toList());
  }

  /** The highest level among them. */
  static Optional<Level> level(List<Concern> concerns) {
    return concerns.stream().map(Concern::level).max(Comparator.naturalOrder());
  }

  /** One more, or the same one again. */
  static List<Concern> with(List<Concern> concerns, Trigger trigger, Instant time) {
    var all = new ArrayList<Concern>();
    boolean known = false;
    for (var concern : concerns) {
      boolean same = concern.rule().equals(trigger.rule());
      known |= same;
      all.add(same ? concern.joinedBy(trigger, trigger.level()) : concern);
    }
    if (!known) {
      all.add(Concern.of(trigger, time));
    }
    return sorted(all);
  }

  /** Those of two episodes that become one; of the same rule the graver. */
  static List<Concern> together(List<Concern> own, List<Concern> others) {
    Map<String, Concern> byRule = new LinkedHashMap<>();
    own.forEach(concern -> byRule.put(concern.rule(), concern));
    others.forEach(
        concern ->
            byRule.merge(
                concern.rule(),
                concern,
                (known, other) -> other.level().compareTo(known.level()) > 0 ? other : known));
    return sorted(List.copyOf(byRule.values()));
  }

  /**
   * After a new picture: what fired joins or rises at once; what did not fire, or less, falls or
   * leaves as its recovery lasts.
   *
   * @param kept rules that no picture lays to rest
   */
  static List<Concern> after(
      List<Concern> before,
      List<Trigger> fired,
      Recent recent,
      Recovery recovery,
      Instant asOf,
      Predicate<String> kept) {
    Map<String, Trigger> open = new LinkedHashMap<>();
    fired.forEach(trigger -> open.put(trigger.rule(), trigger));
    var all = new ArrayList<Concern>();
    for (var concern : before) {
      @Nullable Trigger trigger = open.remove(concern.rule());
      if (kept.test(concern.rule())) {
        all.add(concern);
        continue;
      }
      var standing =
          concern.lasting()
              ? recent.standing(concern.rule(), concern.level(), recovery)
              : Optional.<Level>empty();
      if (trigger != null) {
        all.add(concern.joinedBy(trigger, higher(trigger.level(), standing)));
      } else {
        standing.ifPresent(level -> all.add(concern.unseen(level)));
      }
    }
    open.values().forEach(trigger -> all.add(Concern.of(trigger, asOf)));
    return sorted(all);
  }

  private static Level higher(Level level, Optional<Level> other) {
    return other.filter(standing -> standing.compareTo(level) > 0).orElse(level);
  }

  private static List<Concern> sorted(List<Concern> concerns) {
    return concerns.stream().sorted(GRAVEST_FIRST).toList();
  }
}
