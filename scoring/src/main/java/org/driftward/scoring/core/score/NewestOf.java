package org.driftward.scoring.core.score;

import java.time.Instant;
import java.util.Collection;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A word concluded by rules. Of the rules that hold, the one on the newest reading counts; at the
 * same time, the first listed. A rule may also say that somebody must be asked: then no older
 * reading answers.
 *
 * @param ask the finding to record to settle it
 */
public record NewestOf(List<Rule> rules, String ask) implements Measure {

  public NewestOf {
    rules = List.copyOf(rules);
  }

  @Override
  public @Nullable Found find(Input input, Sight sight) {
    Rule newest = null;
    Instant at = Instant.MIN;
    for (var rule : rules) {
      var time = rule.holds(sight);
      if (time != null && time.isAfter(at)) {
        newest = rule;
        at = time;
      }
    }
    return newest == null || newest.gives() == Rule.ASK ? null : found(input, newest, at, sight);
  }

  private static @Nullable Found found(Input input, Rule rule, Instant at, Sight sight) {
    if (rule.gives() == Rule.AS_RECORDED) {
      int place = input.words().indexOf(rule.recorded(sight));
      return place < 0 ? null : new Found(place, input.shown(place), null, at, null);
    }
    return new Found(rule.gives(), input.shown(rule.gives()), null, at, rule.because(sight));
  }

  @Override
  public void name(Sight sight, Collection<String> missing) {
    missing.add(ask);
  }

  @Override
  public List<Source> sources() {
    return rules.stream().flatMap(rule -> rule.sources().stream()).distinct().toList();
  }
}
