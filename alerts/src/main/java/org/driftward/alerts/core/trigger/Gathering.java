package org.driftward.alerts.core.trigger;

import java.time.Instant;
import java.util.HashMap;
import java.util.HashSet;
import java.util.Map;
import java.util.Set;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/** Collects what the rules say about one picture. Lives for one evaluation. */
final class Gathering {

  private final Map<String, Trigger> fired = new HashMap<>();
  private final Map<String, Trigger> suppressed = new HashMap<>();
  private final Map<String, Level> worst = new HashMap<>();
  private final Set<String> drifting = new HashSet<>();

  void fire(String rule, Level level, Map<String, Double> degrees, String words) {
    add(fired, new Trigger(rule, level, degrees, words, true));
    mayReach(rule, level);
  }

  /** Gone with the first set that does not meet it. */
  void firePassing(String rule, Level level, Map<String, Double> degrees, String words) {
    add(fired, new Trigger(rule, level, degrees, words, false));
  }

  void suppress(String rule, Level level, Map<String, Double> degrees, String words) {
    add(suppressed, new Trigger(rule, level, degrees, words, true));
  }

  private static void add(Map<String, Trigger> triggers, Trigger trigger) {
    triggers.merge(trigger.rule(), trigger, Trigger::and);
  }

  /** Does not raise concern, but stands in the way of recovery. */
  void mayReach(String rule, @Nullable Level level) {
    if (level != null) {
      worst.merge(rule, level, (a, b) -> a.compareTo(b) >= 0 ? a : b);
    }
  }

  void drifts(String series) {
    drifting.add(series);
  }

  Evaluation evaluation(Instant set, boolean partial) {
    return new Evaluation(
        fired.values().stream().sorted(Trigger.GRAVEST_FIRST).toList(),
        suppressed.values().stream().sorted(Trigger.GRAVEST_FIRST).toList(),
        new Mark(set, worst, drifting, partial));
  }
}
