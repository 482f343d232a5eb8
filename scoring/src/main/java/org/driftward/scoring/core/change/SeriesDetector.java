package org.driftward.scoring.core.change;

import java.time.Instant;
import java.util.Optional;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Trend;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.DriftRule;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.jspecify.annotations.Nullable;

/**
 * Compares the series of one finding with the patient's own past, by the rule of that finding.
 * Stateless and thread-safe, and the same for all patients.
 *
 * <p>For each reading, in the order of clinical time, {@link #advance} gives the new state, and
 * {@link #drift}, {@link #changed} and {@link #trend} what that state says of the reading just
 * taken in.
 */
public final class SeriesDetector {

  private final SeriesRule rule;
  private final DriftRule drift;
  private final long spacing;
  private final QuietPeriod quiet;
  private final Trends trends;

  SeriesDetector(SeriesRule rule, ScoringPolicy policy, QuietPeriod quiet, Trends trends) {
    this.rule = rule;
    this.drift = policy.drift();
    this.spacing = policy.spacing().toMillis();
    this.quiet = quiet;
    this.trends = trends;
  }

  /**
   * The state after one more reading. A value that the catalogue does not know changes nothing.
   *
   * @throws IllegalArgumentException if the reading is older than the newest of the series
   */
  public SeriesState advance(SeriesState state, Reading reading) {
    double value = rule.level(reading.value());
    if (Double.isNaN(value)) {
      return state;
    }
    long time = reading.takenAt().toEpochMilli();
    state.refuseBefore(time);
    var window =
        rule.numeric() ? trends.extend(state.window(), time, value, spacing) : state.window();
    boolean counts = state.counted() == SeriesState.NEVER || time - state.counted() >= spacing;
    long counted = counts ? time : state.counted();
    if (!rule.drifts() && !rule.changes()) {
      return new SeriesState(state.quiet(), counted, state.sums(), SeriesState.NEVER, window);
    }
    var ready = quiet.ready(rule, state, time);
    var baseline = quiet.baseline(rule, ready.quiet());
    boolean changed = baseline != null && rule.worsened(baseline.centre(), value);
    double z = measurable(baseline) ? baseline.standardise(value) : 0;
    boolean joins = counts && !changed && Math.abs(z) < drift.limit();
    return new SeriesState(
        joins ? quiet.with(ready.quiet(), time, value) : ready.quiet(),
        counted,
        counts ? add(ready.sums(), z) : ready.sums(),
        changed ? firstChanged(state, time) : SeriesState.NEVER,
        window);
  }

  /** How far the newest reading lies from the baseline; empty while there is no baseline. */
  public Optional<Drift> drift(SeriesState state, Reading newest) {
    double value = rule.level(newest.value());
    var baseline = quiet.baseline(rule, state.quiet());
    if (Double.isNaN(value) || !measurable(baseline)) {
      return Optional.empty();
    }
    double z = baseline.standardise(value);
    double sum = state.sums().larger();
    double centre = baseline.centre();
    boolean step = Math.abs(z) >= drift.limit() && rule.worse(z, centre, value);
    boolean creep = Math.abs(sum) >= drift.decision() && rule.worse(sum, centre, value);
    return Optional.of(
        new Drift(
            newest.code(),
            newest.key().site(),
            newest.key().side(),
            value,
            rule.unit(),
            centre,
            baseline.spread(),
            z,
            step || creep,
            sum,
            baseline.sets(),
            Instant.ofEpochMilli(baseline.from()),
            Instant.ofEpochMilli(baseline.until())));
  }

  /** The newest reading as a changed finding, if it is worse than usual by what counts. */
  public Optional<ChangedFinding> changed(SeriesState state, Reading newest) {
    if (state.changedSince() == SeriesState.NEVER) {
      return Optional.empty();
    }
    var baseline = quiet.baseline(rule, state.quiet());
    if (baseline == null) {
      return Optional.empty();
    }
    return Optional.of(
        Change.of(rule, newest, baseline, Instant.ofEpochMilli(state.changedSince())));
  }

  /**
   * Slope of the recent past up to the newest reading; empty on too few values.
   *
   * @param ahead asked only where the values go up or down
   */
  public Optional<Trend> trend(SeriesState state, Reading newest, Ahead ahead) {
    return trends.of(state.window(), newest, ahead);
  }

  private boolean measurable(@Nullable Baseline baseline) {
    return rule.drifts() && quiet.enough(baseline);
  }

  private Cusum add(Cusum sums, double z) {
    double step = Math.max(-drift.limit(), Math.min(drift.limit(), z));
    return sums.next(step, drift.allowance()).heldAt(drift.decision());
  }

  private static long firstChanged(SeriesState state, long time) {
    return state.changedSince() == SeriesState.NEVER ? time : state.changedSince();
  }
}
