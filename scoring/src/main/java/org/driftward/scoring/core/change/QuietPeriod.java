package org.driftward.scoring.core.change;

import java.util.Arrays;
import org.driftward.scoring.core.policy.QuietRule;
import org.jspecify.annotations.Nullable;

/** Decides which values make a baseline. The rule in words is {@link QuietRule}'s. */
final class QuietPeriod {

  private final QuietRule rule;
  private final long span;

  QuietPeriod(QuietRule rule) {
    this.rule = rule;
    this.span = rule.span().toMillis();
  }

  /**
   * The state that a reading at {@code time} is judged by: the waiting value is taken in, a full
   * quiet period is settled, and one that began unwell gives way when the patient has recovered.
   */
  SeriesState ready(SeriesRule series, SeriesState state, long time) {
    var quiet = state.quiet() instanceof Forming forming ? forming.admitted() : state.quiet();
    var baseline = baseline(series, quiet);
    if (baseline != null && recovered(series, baseline, state.window())) {
      return new SeriesState(
          lastOf(state.window()),
          state.counted(),
          Cusum.ZERO,
          state.changedSince(),
          state.window());
    }
    if (quiet instanceof Forming forming && baseline != null && over(forming, time)) {
      quiet = new Settled(baseline);
    }
    return new SeriesState(
        quiet, state.counted(), state.sums(), state.changedSince(), state.window());
  }

  /** The quiet period with one more value, unless it has ended. */
  Quiet with(Quiet quiet, long time, double value) {
    return quiet instanceof Forming forming ? forming.with(time, value) : quiet;
  }

  /** The baseline on the values taken in so far, however few; null without any. */
  @Nullable Baseline baseline(SeriesRule series, Quiet quiet) {
    if (quiet instanceof Settled settled) {
      return settled.baseline();
    }
    var forming = (Forming) quiet;
    if (forming.sets() == 0) {
      return null;
    }
    double centre = series.usual(forming.values());
    double spread = series.spread(forming.values(), centre);
    return new Baseline(centre, spread, forming.sets(), forming.from(), forming.until());
  }

  /** Whether a baseline rests on enough values to measure drift by. */
  boolean enough(@Nullable Baseline baseline) {
    return baseline != null && baseline.sets() >= rule.minimum();
  }

  private boolean over(Forming forming, long time) {
    return forming.sets() >= rule.maximum()
        || (forming.sets() >= rule.minimum() && time - forming.from() >= span);
  }

  /**
   * A patient who came in unwell would be measured against the illness for ever. Once as many
   * values in a row as make a baseline lie in the expected range, those are the quiet period.
   */
  private boolean recovered(SeriesRule series, Baseline baseline, Window window) {
    int first = window.size() - rule.minimum();
    if (first < 0 || !enough(baseline) || !series.unwell(baseline.centre())) {
      return false;
    }
    for (int i = first; i < window.size(); i++) {
      if (!series.expected(window.value(i))) {
        return false;
      }
    }
    return true;
  }

  private Forming lastOf(Window window) {
    int first = window.size() - rule.minimum();
    int last = window.size() - 1;
    var values = Arrays.copyOfRange(window.values(), first, window.size());
    return new Forming(values, window.time(first), window.time(last), null);
  }
}
