package org.driftward.alerts.core.trigger;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.core.policy.TriggerPolicy;
import org.driftward.alerts.core.policy.TriggerPolicy.ScoreRule;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * Totals, single inputs, rise over the patient's own level, and what an incomplete set may hide.
 */
final class ScoreTriggers {

  private final TriggerPolicy policy;
  private final Wording wording;

  ScoreTriggers(TriggerPolicy policy, Wording wording) {
    this.policy = policy;
    this.wording = wording;
  }

  void gather(Snapshot snapshot, Limits limits, Gathering gathering) {
    @Nullable Score leading = snapshot.leading();
    if (leading == null) {
      return;
    }
    for (var score : snapshot.scores()) {
      var rules = rulesFor(score, leading);
      if (!rules.isEmpty()) {
        total(score, rules, snapshot.asOf(), limits, gathering);
        possible(score, rules, snapshot.asOf(), gathering);
      }
    }
    single(leading, limits, gathering);
    rise(leading, snapshot.asOf(), limits, gathering);
  }

  private List<ScoreRule> rulesFor(Score score, Score leading) {
    return policy.scores().stream()
        .filter(rule -> score.id().equals(rule.score() == null ? leading.id() : rule.score()))
        .toList();
  }

  private void total(
      Score score, List<ScoreRule> rules, Instant asOf, Limits limits, Gathering gathering) {
    var rule = "score-" + score.id();
    var accepted = limits.acceptedPoints(score);
    @Nullable ScoreRule raw = reached(rules, score.low());
    @Nullable ScoreRule altered = reached(rules, score.low().subtract(accepted));
    if (altered != null) {
      gathering.fire(rule, altered.level(), wording.total(score, altered.at(), asOf));
    }
    if (raw != null && !raw.equals(altered)) {
      gathering.suppress(rule, raw.level(), wording.total(score, raw.at(), asOf));
    }
    gathering.mayReach(rule, levelOf(reached(rules, score.high().subtract(accepted))));
  }

  private void possible(Score score, List<ScoreRule> rules, Instant asOf, Gathering gathering) {
    var possible = policy.possible();
    @Nullable ScoreRule worst = reached(rules, score.high());
    @Nullable ScoreRule least = reached(rules, score.low());
    if (possible != null
        && worst != null
        && !worst.equals(least)
        && worst.level().compareTo(possible.reaching()) >= 0) {
      gathering.firePassing(
          "possible-" + score.id(), possible.level(), wording.possible(score, worst.at(), asOf));
    }
  }

  private void single(Score score, Limits limits, Gathering gathering) {
    var single = policy.single();
    if (single == null) {
      return;
    }
    for (var input : score.inputs()) {
      if (input.points() >= single.points()) {
        report(input, score, single.level(), limits, gathering);
      }
    }
    // An input that is missing may score anything: what it last reached has not recovered.
    score.missing().forEach(code -> gathering.mayReach("single-" + code, single.level()));
  }

  private void report(
      ScoredInput input, Score score, Level level, Limits limits, Gathering gathering) {
    var rule = "single-" + input.code();
    var words = wording.single(input, score);
    if (limits.accept(input)) {
      gathering.suppress(rule, level, words);
    } else {
      gathering.fire(rule, level, words);
    }
  }

  private void rise(Score score, Instant asOf, Limits limits, Gathering gathering) {
    var rise = policy.rise();
    if (rise == null || score.usual() == null) {
      return;
    }
    var rule = "rise-" + score.id();
    var usual = score.usual();
    var accepted = limits.acceptedPoints(score);
    if (score.low().subtract(accepted).subtract(usual).compareTo(rise.by()) >= 0) {
      gathering.fire(rule, rise.level(), wording.rise(score, usual, asOf));
    } else if (score.low().subtract(usual).compareTo(rise.by()) >= 0) {
      gathering.suppress(rule, rise.level(), wording.rise(score, usual, asOf));
    }
    if (score.high().subtract(accepted).subtract(usual).compareTo(rise.by()) >= 0) {
      gathering.mayReach(rule, rise.level());
    }
  }

  /** The gravest rule that the total meets. */
  private static @Nullable ScoreRule reached(List<ScoreRule> rules, BigDecimal total) {
    @Nullable ScoreRule gravest = null;
    for (var rule : rules) {
      boolean met = total.compareTo(rule.at()) >= 0;
      if (met && (gravest == null || rule.level().compareTo(gravest.level()) > 0)) {
        gravest = rule;
      }
    }
    return gravest;
  }

  private static @Nullable Level levelOf(@Nullable ScoreRule rule) {
    return rule == null ? null : rule.level();
  }
}
