package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.BinaryOperator;
import java.util.function.Predicate;
import org.driftward.alerts.core.policy.Recovery;
import org.driftward.alerts.core.trigger.Recent;
import org.driftward.alerts.core.trigger.Severity;
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

  /**
   * @param assessment that gave them, or null
   */
  static List<Concern> of(List<Trigger> fired, Instant since, @Nullable String assessment) {
    return sorted(fired.stream().map(trigger -> Concern.of(trigger, since, assessment)).toList());
  }

  /** How bad the newest set found each; what it did not meet is left out. */
  static Map<String, Severity> seen(List<Concern> concerns) {
    var seen = new HashMap<String, Severity>();
    for (var concern : concerns) {
      if (concern.seen() != null) {
        seen.put(concern.rule(), concern.seen());
      }
    }
    return seen;
  }

  /** What remains of them when an assessment was a mistake. */
  static List<Concern> without(List<Concern> concerns, String assessment) {
    return concerns.stream().flatMap(concern -> concern.without(assessment).stream()).toList();
  }

  /** The highest level among them. */
  static Optional<Level> level(List<Concern> concerns) {
    return concerns.stream().map(Concern::level).max(Comparator.naturalOrder());
  }

  /** More of them, or the same ones again. */
  static List<Concern> with(List<Concern> concerns, List<Concern> others) {
    return together(concerns, others, Concerns::again);
  }

  /** Those of two episodes that become one; of the same rule the graver. */
  static List<Concern> together(List<Concern> own, List<Concern> others) {
    return together(
        own, others, (known, other) -> other.level().compareTo(known.level()) > 0 ? other : known);
  }

  /** The newer one, on what both rest on; it does not fall by that. */
  private static Concern again(Concern known, Concern other) {
    var first = known.witness();
    var last = other.witness();
    return new Concern(
        known.rule(),
        Severity.graver(known.level(), other.level()),
        other.seen(),
        other.words(),
        known.since(),
        other.lasting(),
        first == null || last == null ? last : first.joinedBy(last.last()));
  }

  private static List<Concern> together(
      List<Concern> own, List<Concern> others, BinaryOperator<Concern> both) {
    Map<String, Concern> byRule = new LinkedHashMap<>();
    own.forEach(concern -> byRule.put(concern.rule(), concern));
    others.forEach(concern -> byRule.merge(concern.rule(), concern, both));
    return sorted(List.copyOf(byRule.values()));
  }

  /**
   * After a new picture: what fired joins or rises at once; what did not fire, or less, falls or
   * leaves as its recovery lasts. What only this very assessment gave, and gives no more, was a
   * mistake that has been put right.
   *
   * @param kept rules that no picture lays to rest
   */
  static List<Concern> after(
      List<Concern> before,
      Judgement judged,
      Recent recent,
      Recovery recovery,
      Predicate<String> kept) {
    Map<String, Trigger> open = new LinkedHashMap<>();
    judged.fired().forEach(trigger -> open.put(trigger.rule(), trigger));
    var all = new ArrayList<Concern>();
    for (var concern : before) {
      @Nullable Trigger trigger = open.remove(concern.rule());
      boolean mistaken = judged.corrects(concern);
      var standing =
          kept.test(concern.rule()) && !mistaken
              ? Optional.of(concern.level())
              : concern.lasting() && !mistaken
                  ? recent.standing(concern.rule(), concern.level(), recovery)
                  : Optional.<Level>empty();
      if (trigger != null) {
        all.add(concern.joinedBy(trigger, higher(trigger.level(), standing), judged.assessment()));
      } else if (kept.test(concern.rule()) && !mistaken) {
        all.add(concern);
      } else {
        standing.ifPresent(level -> all.add(concern.unseen(level)));
      }
    }
    open.values()
        .forEach(trigger -> all.add(Concern.of(trigger, judged.asOf(), judged.assessment())));
    return sorted(all);
  }

  private static Level higher(Level level, Optional<Level> other) {
    return other.map(standing -> Severity.graver(standing, level)).orElse(level);
  }

  private static List<Concern> sorted(List<Concern> concerns) {
    return concerns.stream().sorted(GRAVEST_FIRST).toList();
  }
}
