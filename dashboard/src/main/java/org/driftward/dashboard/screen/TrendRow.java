package org.driftward.dashboard.screen;

import java.time.Duration;
import java.time.Instant;
import java.util.Map;
import java.util.Objects;
import org.driftward.dashboard.core.Movement.Direction;
import org.driftward.scoring.contract.Plain;
import org.driftward.scoring.contract.Trend;
import org.jspecify.annotations.Nullable;

/**
 * The slope of one series, and where it leads if it goes on.
 *
 * @param slope per hour, with the unit
 * @param rests what it rests on: p, number of sets
 * @param ahead the projection with its uncertainty, or why there is none
 */
public record TrendRow(
    String name, Direction arrow, String slope, boolean significant, String rests, String ahead) {

  /**
   * @param titles of the scores, by id
   */
  static TrendRow of(Trend trend, Map<String, String> titles, Findings findings, Instant now) {
    String unit = Wording.unit(findings.unit(trend.code()));
    return new TrendRow(
        titles.containsKey(trend.code())
            ? titles.get(trend.code())
            : findings.name(trend.code(), trend.site(), trend.side()),
        arrow(trend),
        (trend.perHour() > 0 ? "+" : trend.perHour() < 0 ? "−" : "")
            + Plain.rate(trend.perHour())
            + (unit.isEmpty() ? "" : " " + unit)
            + " per hour",
        trend.significant(),
        "p %s, %s".formatted(chance(trend.pValue()), Wording.count(trend.sets(), "set", "sets")),
        ahead(trend, unit, now));
  }

  /** A chance is never nothing: below what three decimals can say it is said to be below. */
  private static String chance(double pValue) {
    return pValue < 0.001 ? "< 0.001" : "= " + Wording.number(pValue, 3);
  }

  private static Direction arrow(Trend trend) {
    if (!trend.significant()) {
      return Direction.STEADY;
    }
    return trend.perHour() > 0 ? Direction.RISING : Direction.FALLING;
  }

  private static String ahead(Trend trend, String unit, Instant now) {
    if (trend.projectedCrossing() == null || trend.threshold() == null) {
      return "no projection: the data do not carry one";
    }
    return "reaches %s in about %s (%s)"
        .formatted(
            Wording.withUnit(Wording.number(trend.threshold(), 1), unit),
            ahead(trend.projectedCrossing(), now),
            between(trend.earliest(), trend.latest(), now));
  }

  private static String between(@Nullable Instant earliest, @Nullable Instant latest, Instant now) {
    if (earliest == null && latest == null) {
      return "uncertain";
    }
    if (latest == null) {
      return "not before " + ahead(Objects.requireNonNull(earliest), now) + ", end open";
    }
    return earliest == null
        ? "by " + ahead(latest, now)
        : ahead(earliest, now) + " to " + ahead(latest, now);
  }

  private static String ahead(Instant time, Instant now) {
    return Wording.span(Duration.between(now, time.isBefore(now) ? now : time));
  }
}
