package org.driftward.alerts.core.trigger;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.jspecify.annotations.Nullable;

/**
 * The altered limits in force: what lies within them calls nobody, and never changes a score.
 *
 * @param signedAt the total of each score in the picture that the signer of the plan saw
 */
public record Limits(List<Limit> limits, Map<String, BigDecimal> signedAt) {

  public static final Limits NONE = new Limits(List.of(), Map.of());

  public Limits {
    limits = List.copyOf(limits);
    signedAt = Map.copyOf(signedAt);
  }

  public static Limits of(@Nullable CarePlan plan, Map<String, BigDecimal> signedAt, Instant time) {
    return plan != null && plan.inForce(time) ? new Limits(plan.limits(), signedAt) : NONE;
  }

  /** Nobody signed for what nobody had measured. */
  boolean exceedsWhatWasSigned(String score, BigDecimal total) {
    @Nullable BigDecimal signed = signedAt.get(score);
    return signed == null || total.compareTo(signed) > 0;
  }

  /** Whether they accept everything that others accept. */
  public boolean include(Limits others) {
    return others.limits.stream()
        .allMatch(other -> limits.stream().anyMatch(limit -> within(limit, other)));
  }

  private static boolean within(Limit outer, Limit inner) {
    return outer.code().equals(inner.code())
        && (outer.low() == null || (inner.low() != null && outer.low().compareTo(inner.low()) <= 0))
        && (outer.high() == null
            || (inner.high() != null && outer.high().compareTo(inner.high()) >= 0));
  }

  boolean accept(String code, BigDecimal value) {
    return limits.stream().filter(limit -> limit.code().equals(code)).anyMatch(l -> in(l, value));
  }

  boolean accept(String code, Scalar value) {
    return value.number() != null && accept(code, value.number());
  }

  boolean accept(ScoredInput input) {
    return accept(input.code(), input.value());
  }

  /** The points of the inputs that lie within their altered limits. */
  BigDecimal acceptedPoints(Score score) {
    return BigDecimal.valueOf(
        score.inputs().stream().filter(this::accept).mapToInt(ScoredInput::points).sum());
  }

  private static boolean in(Limit limit, BigDecimal value) {
    return (limit.low() == null || limit.low().compareTo(value) <= 0)
        && (limit.high() == null || value.compareTo(limit.high()) <= 0);
  }
}
