package org.driftward.alerts.core.trigger;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.ScoredInput;
import org.jspecify.annotations.Nullable;

/** The altered limits in force: what lies within them calls nobody, and never changes a score. */
public record Limits(List<Limit> limits) {

  public static final Limits NONE = new Limits(List.of());

  public Limits {
    limits = List.copyOf(limits);
  }

  public static Limits of(@Nullable CarePlan plan, Instant time) {
    return plan != null && plan.inForce(time) ? new Limits(plan.limits()) : NONE;
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
