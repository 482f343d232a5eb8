package org.driftward.scoring.core.change;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Arrays;
import java.util.Optional;
import org.driftward.scoring.contract.Trend;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.LevelRule;
import org.driftward.scoring.core.policy.TrendRule;
import org.hipparchus.distribution.continuous.NormalDistribution;

/** Slope of the recent past, its significance, and where it leads. */
final class Trends {

  private static final double MILLIS_PER_HOUR = 3_600_000;

  private final TrendRule rule;
  private final long reach;
  private final double quantile;
  private final double mentionQuantile;

  Trends(TrendRule rule) {
    this.rule = rule;
    this.reach = rule.window().toMillis();
    var normal = new NormalDistribution();
    this.quantile = normal.inverseCumulativeProbability(1 - rule.level() / 2);
    this.mentionQuantile = normal.inverseCumulativeProbability(1 - rule.mention() / 2);
  }

  /** The window after one more value; what is older than the policy's window leaves. */
  Window extend(Window window, long time, double value, long spacing) {
    return window.with(time, value, time - reach, spacing, rule.points());
  }

  /**
   * The trend of a window whose last value is {@code newest}; empty on too few values, and where
   * chance explains the slope well enough.
   */
  Optional<Trend> of(Window window, Reading newest, Ahead ahead) {
    int n = window.size();
    if (n < rule.minimum()) {
      return Optional.empty();
    }
    var values = window.values();
    var test = MannKendall.of(values);
    if (!test.below(rule.mention(), mentionQuantile)) {
      return Optional.empty();
    }
    var hours = hours(window);
    var slopes = TheilSen.of(hours, values);
    double perHour = slopes.slope();
    boolean significant = test.below(rule.level(), quantile);
    var threshold = perHour == 0 ? null : ahead.threshold(perHour > 0);
    var crossing =
        significant && threshold != null
            ? Crossing.of(hours, values, perHour, threshold, slopes, test.variance(), quantile)
            : null;
    if (crossing != null && crossing.hours() > rule.horizon().toMillis() / MILLIS_PER_HOUR) {
      crossing = null;
    }
    var now = newest.takenAt();
    return Optional.of(
        new Trend(
            newest.code(),
            newest.key().site(),
            newest.key().side(),
            perHour,
            test.pValue(),
            test.s(),
            n,
            Instant.ofEpochMilli(window.time(0)),
            significant,
            crossing == null ? null : in(now, crossing.hours()),
            crossing == null ? null : in(now, crossing.earliest()),
            crossing == null || crossing.latest() == null ? null : in(now, crossing.latest()),
            threshold));
  }

  /** Median of the values before {@code at} that the rule's window holds; empty on too few. */
  Optional<BigDecimal> level(Window window, long at, LevelRule level) {
    int end = window.size();
    while (end > 0 && window.time(end - 1) >= at) {
      end--;
    }
    int start = 0;
    while (start < end && window.time(start) < at - level.window().toMillis()) {
      start++;
    }
    if (end - start < level.minimum()) {
      return Optional.empty();
    }
    double median = Robust.median(Arrays.copyOfRange(window.values(), start, end));
    return Optional.of(BigDecimal.valueOf(median));
  }

  /** Hours relative to the newest value, so that a fitted line's intercept is the level now. */
  private static double[] hours(Window window) {
    int n = window.size();
    long now = window.time(n - 1);
    var hours = new double[n];
    for (int i = 0; i < n; i++) {
      hours[i] = (window.time(i) - now) / MILLIS_PER_HOUR;
    }
    return hours;
  }

  private static Instant in(Instant now, double hours) {
    return now.plusMillis(Math.round(hours * MILLIS_PER_HOUR));
  }
}
