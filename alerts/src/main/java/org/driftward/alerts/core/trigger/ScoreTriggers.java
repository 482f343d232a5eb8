package org.driftward.alerts.core.trigger;

import java.math.BigDecimal;
import java.util.HashMap;
import java.util.Map;
import java.util.Optional;
import org.driftward.alerts.core.policy.ScoreResponse;
import org.driftward.alerts.core.policy.ScoreResponse.Reached;
import org.driftward.alerts.core.policy.TriggerPolicy;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.driftward.scoring.contract.Snapshot;

/**
 * Totals, single inputs, rise over the patient's own level, and what missing inputs may hide: of
 * every score as its own response says.
 */
final class ScoreTriggers {

  private final TriggerPolicy policy;
  private final Distance distance;
  private final Wording wording;

  ScoreTriggers(TriggerPolicy policy, Distance distance, Wording wording) {
    this.policy = policy;
    this.distance = distance;
    this.wording = wording;
  }

  void gather(Snapshot snapshot, Limits limits, Gathering gathering) {
    for (var score : snapshot.scores()) {
      policy
          .response(score.id())
          .ifPresent(response -> new OneScore(score, response, snapshot, limits, gathering).all());
    }
  }

  /** One score of one picture. */
  private final class OneScore {
    private final Score score;
    private final ScoreResponse response;
    private final Snapshot snapshot;
    private final Limits limits;
    private final Gathering gathering;
    private final BigDecimal accepted;

    OneScore(
        Score score,
        ScoreResponse response,
        Snapshot snapshot,
        Limits limits,
        Gathering gathering) {
      this.score = score;
      this.response = response;
      this.snapshot = snapshot;
      this.limits = limits;
      this.gathering = gathering;
      this.accepted =
          response.worse() == ScoreResponse.Worse.HIGHER
              ? limits.acceptedPoints(score)
              : BigDecimal.ZERO;
    }

    void all() {
      total();
      possible();
      single();
      rise();
    }

    private void total() {
      var rule = "score-" + score.id();
      var total = response.atLeast(score);
      var raw = response.reached(total, score.risk());
      var told = told(raw, altered(total, score.risk()), total);
      var degrees = Map.of("points", response.degree(total));
      raw.ifPresent(
          reached -> {
            var words = wording.total(score, total, reached.why(), snapshot.asOf());
            told.ifPresent(level -> gathering.fire(rule, level, degrees, words));
            if (!told.equals(Optional.of(reached.level()))) {
              gathering.suppress(rule, reached.level(), degrees, words);
            }
          });
      var worst = response.atWorst(score);
      var mayBe = response.reached(worst, score.riskIfWorst());
      told(mayBe, altered(worst, score.riskIfWorst()), worst)
          .ifPresent(level -> gathering.mayReach(rule, level));
    }

    /** What remains of a total beyond what the altered limits accept. */
    private Optional<Reached> altered(BigDecimal total, String risk) {
      return accepted.signum() == 0
          ? response.reached(total, risk)
          : response.reached(total.subtract(accepted), "");
    }

    /**
     * Altered limits keep quiet what lies within them, and are no licence for the whole patient: a
     * total that reaches high, or one that is higher than the signer of the plan saw, is lowered by
     * one level and no more.
     */
    private Optional<Level> told(
        Optional<Reached> raw, Optional<Reached> altered, BigDecimal total) {
      var remains = altered.map(Reached::level);
      if (accepted.signum() == 0 || raw.isEmpty()) {
        return remains;
      }
      boolean floored =
          raw.get().level() == Level.HIGH || limits.exceedsWhatWasSigned(score.id(), total);
      if (!floored) {
        return remains;
      }
      var floor = lowered(raw.get().level());
      return Optional.of(remains.map(level -> Severity.graver(level, floor)).orElse(floor));
    }

    private void possible() {
      var possible = policy.possible();
      var worst = response.reached(response.atWorst(score), score.riskIfWorst());
      if (possible == null || worst.isEmpty()) {
        return;
      }
      var reached = worst.get().level();
      var least = response.reached(response.atLeast(score), score.risk()).map(Reached::level);
      boolean hidden = least.map(level -> level.compareTo(reached) < 0).orElse(true);
      if (hidden && reached.compareTo(possible.reaching()) >= 0) {
        boolean set = snapshot.asOf().equals(snapshot.lastSet());
        var level = (set ? possible.set() : possible.spotCheck()).level(reached);
        gathering.firePassing(
            "possible-" + score.id(),
            level,
            Map.of("points", response.degree(response.atWorst(score))),
            wording.possible(score, worst.get().why(), snapshot.asOf()));
      }
    }

    private void single() {
      var single = response.single();
      if (single == null) {
        return;
      }
      for (var input : score.inputs()) {
        if (input.points() >= single.points()) {
          report(input, single.level());
        }
      }
      // An input that is missing may score anything: what it last reached has not recovered.
      score.missing().forEach(code -> gathering.mayReach("single-" + code, single.level()));
    }

    private void report(ScoredInput input, Level level) {
      var rule = "single-" + input.code();
      var words = wording.single(input, score);
      var degrees = new HashMap<>(distance.of(input.code(), input.value()));
      degrees.put("points in " + score.id(), (double) input.points());
      if (limits.accept(input)) {
        gathering.suppress(rule, level, degrees, words);
      } else {
        gathering.fire(rule, level, degrees, words);
      }
    }

    private void rise() {
      var rise = response.rise();
      var usual = score.usual();
      if (rise == null || usual == null) {
        return;
      }
      var rule = "rise-" + score.id();
      var words = wording.rise(score, usual, snapshot.asOf());
      var risen = score.low().subtract(usual);
      var degrees = Map.of("points", risen.doubleValue());
      if (risen.subtract(accepted).compareTo(rise.by()) >= 0) {
        gathering.fire(rule, rise.level(), degrees, words);
      } else if (risen.compareTo(rise.by()) >= 0) {
        gathering.suppress(rule, rise.level(), degrees, words);
      }
      if (score.high().subtract(accepted).subtract(usual).compareTo(rise.by()) >= 0) {
        gathering.mayReach(rule, rise.level());
      }
    }
  }

  private static Level lowered(Level level) {
    return level == Level.HIGH ? Level.MEDIUM : Level.LOW;
  }
}
