package org.driftward.alerts.core.trigger;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/** Collects what the rules say about one picture. Lives for one evaluation. */
final class Gathering {

  private static final Comparator<Trigger> GRAVEST_FIRST =
      Comparator.comparing(Trigger::level).reversed().thenComparing(Trigger::rule);

  private final List<Trigger> fired = new ArrayList<>();
  private final List<Trigger> suppressed = new ArrayList<>();
  private final Map<String, Level> worst = new HashMap<>();
  private final Set<String> drifting = new HashSet<>();

  void fire(String rule, Level level, String words) {
    fired.add(new Trigger(rule, level, words, true));
    mayReach(rule, level);
  }

  /** Gone with the first set that does not meet it. */
  void firePassing(String rule, Level level, String words) {
    fired.add(new Trigger(rule, level, words, false));
  }

  void suppress(String rule, Level level, String words) {
    suppressed.add(new Trigger(rule, level, words, true));
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
        fired.stream().sorted(GRAVEST_FIRST).toList(),
        suppressed.stream().sorted(GRAVEST_FIRST).toList(),
        new Mark(set, worst, drifting, partial));
  }
}
