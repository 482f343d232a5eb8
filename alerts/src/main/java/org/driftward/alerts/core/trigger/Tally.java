package org.driftward.alerts.core.trigger;

import java.time.Instant;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * What all sets up to one add up to.
 *
 * @param set clinical time of that one
 * @param all every set there was
 * @param below for each lasting rule that was ever met, how long it has stayed below each level
 * @param drifting for each series that is far from the patient's baseline, in how many sets running
 * @param partial how many sets running lacked core observations
 */
public record Tally(
    Instant set, Run all, Map<String, Below> below, Map<String, Integer> drifting, int partial) {

  public Tally {
    Objects.requireNonNull(set, "set");
    Objects.requireNonNull(all, "all");
    below = Map.copyOf(below);
    drifting = Map.copyOf(drifting);
  }

  /** A rule that was never met has been below every level all along. */
  Below below(String rule) {
    var known = below.get(rule);
    return known == null ? new Below(all, all, all) : known;
  }

  Tally meeting(Set<String> rules) {
    var anew = new HashMap<>(below);
    rules.forEach(rule -> anew.put(rule, Below.NOTHING));
    return new Tally(set, all, anew, drifting, partial);
  }

  static Tally after(@Nullable Tally before, Mark mark) {
    var below = new HashMap<String, Below>();
    var rules = new TreeSet<>(mark.worst().keySet());
    if (before != null) {
      rules.addAll(before.below.keySet());
    }
    for (var rule : rules) {
      var earlier = before == null ? Below.NOTHING : before.below(rule);
      below.put(rule, earlier.after(mark.worst().get(rule), mark.set()));
    }
    var drifting = new HashMap<String, Integer>();
    for (var series : mark.drifting()) {
      drifting.put(series, 1 + (before == null ? 0 : before.drifting.getOrDefault(series, 0)));
    }
    int partial = before == null ? 0 : before.partial;
    return new Tally(
        mark.set(),
        Run.extended(before == null ? null : before.all, mark.set()),
        below,
        drifting,
        mark.partial() ? partial + 1 : 0);
  }
}
