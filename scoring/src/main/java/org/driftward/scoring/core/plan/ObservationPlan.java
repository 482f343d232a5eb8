package org.driftward.scoring.core.plan;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.UrgentFinding;
import org.driftward.scoring.core.policy.ObservationRule;
import org.driftward.scoring.core.policy.ObservationRule.Core;
import org.driftward.scoring.core.policy.ObservationRule.Row;
import org.jspecify.annotations.Nullable;

/**
 * Says when the next set of observations is due. Stateless and thread-safe.
 *
 * <p>The signed interval of a care plan holds while the plan is in force; otherwise the shortest of
 * the intervals that the policy gives for the patient's scores. What was taken in one look at the
 * patient decides whether it is a set, never what is known besides: the caller keeps the newest
 * {@link VitalSet}.
 */
public final class ObservationPlan {

  /**
   * When the next set is due.
   *
   * @param interval from the newest set; {@code due} is that much later, or when a care plan's
   *     longer interval lapses
   * @param why this interval, in words
   * @param partial codes of the core observations that the newest set lacks
   */
  public record Next(Instant due, Duration interval, String why, List<String> partial) {
    public Next {
      Objects.requireNonNull(due, "due");
      Objects.requireNonNull(interval, "interval");
      Objects.requireNonNull(why, "why");
      partial = List.copyOf(partial);
    }
  }

  private final ObservationRule rule;

  public ObservationPlan(ObservationRule rule) {
    this.rule = Objects.requireNonNull(rule, "rule");
  }

  /**
   * The set that an assessment is, or completes, if it holds enough core observations together with
   * those of the same look: a feed may send each vital sign by itself.
   *
   * @param codes of its findings; without a core observation among them it is no set
   * @param sameLook whether a code was taken shortly before, or now
   */
  public Optional<VitalSet> setIn(
      Collection<String> codes, Predicate<String> sameLook, Instant takenAt) {
    if (rule.core().stream().noneMatch(core -> adds(codes, core))) {
      return Optional.empty();
    }
    Predicate<String> seen = code -> codes.contains(code) || sameLook.test(code);
    var lacking = new ArrayList<String>();
    for (var core : rule.core()) {
      if (!holds(seen, core)) {
        lacking.add(core.code());
      }
    }
    boolean enough = rule.core().size() - lacking.size() >= rule.minimum();
    return enough ? Optional.of(new VitalSet(takenAt, lacking)) : Optional.empty();
  }

  /**
   * When the next set is due after {@code newest}.
   *
   * @param scores as of {@code asOf}, the leading one first
   * @param urgent of the picture, gravest first
   * @param asOf clinical time of the picture; a care plan counts if it is in force then
   */
  public Next next(
      VitalSet newest,
      List<Score> scores,
      List<UrgentFinding> urgent,
      Instant asOf,
      @Nullable CarePlan carePlan) {
    var standard = shorter(shorter(standard(scores), urgent(urgent)), lacking(newest));
    var due = newest.takenAt().plus(standard.interval());
    var signed = carePlan == null || !carePlan.inForce(asOf) ? null : carePlan.interval();
    if (carePlan == null || signed == null) {
      return new Next(due, standard.interval(), standard.why(), newest.partial());
    }
    var signedDue = newest.takenAt().plus(signed);
    if (signedDue.isAfter(carePlan.until())) {
      // The plan lapses first: from then on the standard interval holds again.
      signedDue = earlier(signedDue, later(due, carePlan.until()));
    }
    var why = "care plan " + carePlan.version() + ": " + carePlan.reason();
    return new Next(signedDue, signed, why, newest.partial());
  }

  private record Standard(Duration interval, String why) {}

  private static Standard shorter(Standard one, @Nullable Standard other) {
    return other == null || other.interval().compareTo(one.interval()) >= 0 ? one : other;
  }

  private @Nullable Standard urgent(List<UrgentFinding> urgent) {
    if (urgent.isEmpty()) {
      return null;
    }
    var gravest = urgent.get(0);
    var interval = rule.urgent().get(gravest.level());
    return interval == null ? null : new Standard(interval, gravest.words());
  }

  /**
   * What a set lacks is to be measured soon; only a whole set moves the next one by its interval.
   */
  private @Nullable Standard lacking(VitalSet newest) {
    var settle = rule.settle();
    return settle == null || newest.complete()
        ? null
        : new Standard(settle, "the set lacks " + String.join(", ", newest.partial()));
  }

  private Standard standard(List<Score> scores) {
    var shortest = new Standard(rule.longest(), "no score asks for more");
    for (var frequency : rule.frequencies()) {
      for (var score : scores) {
        if (score.id().equals(frequency.score())) {
          var asked = asked(score, frequency.rows());
          shortest = asked.interval().compareTo(shortest.interval()) <= 0 ? asked : shortest;
        }
      }
    }
    return shortest;
  }

  private Standard asked(Score score, List<Row> rows) {
    var recorded = interval(rows, score.low().intValue(), score.single(), score.risk());
    var settle = rule.settle();
    if (settle != null && !score.complete()) {
      // All the points that are hidden may belong to one input.
      int hidden = score.high().subtract(score.low()).intValue();
      var worst =
          interval(
              rows, score.high().intValue(), Math.max(score.single(), hidden), score.riskIfWorst());
      var settled = worst.compareTo(settle) < 0 ? settle : worst;
      if (settled.compareTo(recorded) < 0) {
        return new Standard(
            settled,
            score.title()
                + " is at least "
                + score.low().toPlainString()
                + " and at most "
                + score.high().toPlainString()
                + ": "
                + String.join(", ", score.missing())
                + " missing");
      }
    }
    return new Standard(recorded, score.title() + " " + score.low().toPlainString());
  }

  private Duration interval(List<Row> rows, int total, int single, String risk) {
    for (var row : rows) {
      if (row.fits(total, single, risk)) {
        return row.interval();
      }
    }
    return rule.longest();
  }

  /** Whether an assessment with these codes says something of the core observation. */
  private static boolean adds(Collection<String> codes, Core core) {
    return codes.contains(core.code()) || core.or().stream().anyMatch(codes::contains);
  }

  private static boolean holds(Predicate<String> seen, Core core) {
    return seen.test(core.code()) || (!core.or().isEmpty() && core.or().stream().allMatch(seen));
  }

  private static Instant earlier(Instant a, Instant b) {
    return a.isBefore(b) ? a : b;
  }

  private static Instant later(Instant a, Instant b) {
    return a.isAfter(b) ? a : b;
  }
}
