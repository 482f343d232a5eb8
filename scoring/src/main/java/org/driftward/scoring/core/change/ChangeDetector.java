package org.driftward.scoring.core.change;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Drift;
import org.driftward.scoring.contract.Trend;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.DriftRule;
import org.driftward.scoring.core.policy.ScoringPolicy;
import org.jspecify.annotations.Nullable;

/**
 * Compares each patient with themselves. Stateless and thread-safe; the memory of a series is its
 * {@link SeriesState}, which the caller keeps.
 *
 * <p>For each assessment, in the order of clinical time: {@link #derived} gives the findings
 * computed from its own; for each reading {@link #advance} gives the new state, and {@link #drift},
 * {@link #changed} and {@link #trend} what that state says of the reading just taken in. Scores are
 * series too: a reading whose code is the score's id, a quantity in {@link #SCORE_UNIT}, has a
 * trend and a recent level, and no baseline.
 */
public final class ChangeDetector {

  /** Unit of a score's total, UCUM. */
  public static final String SCORE_UNIT = "{score}";

  private final ScoringPolicy policy;
  private final long spacing;

  /** A hash map, as it is asked several times for each reading; never changed. */
  private final Map<String, SeriesRule> rules;

  private final Derived derived;
  private final QuietPeriod quiet;
  private final Trends trends;

  /**
   * @throws IllegalArgumentException if a rate has a code of the catalogue, or is made of one that
   *     the catalogue does not know
   */
  public ChangeDetector(Catalogue catalogue, ScoringPolicy policy) {
    this.policy = policy;
    this.spacing = policy.spacing().toMillis();
    this.rules = rules(catalogue, policy);
    this.derived = new Derived(catalogue, policy.rates());
    this.quiet = new QuietPeriod(policy.quiet());
    this.trends = new Trends(policy.trend());
  }

  /**
   * What can be computed from the readings of one assessment, as readings of the same assessment.
   * Each is a series of its own, to be advanced like any other.
   *
   * @param together readings of one assessment
   */
  public List<Reading> derived(Collection<Reading> together) {
    return derived.from(together);
  }

  /**
   * The state after one more reading. A value that the catalogue does not know changes nothing.
   *
   * @throws IllegalArgumentException if the reading is older than the newest of the series
   */
  public SeriesState advance(SeriesState state, Reading reading) {
    var rule = rule(reading);
    double value = rule.level(reading.value());
    if (Double.isNaN(value)) {
      return state;
    }
    long time = reading.takenAt().toEpochMilli();
    refuseBefore(state, time);
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
    double z = measurable(rule, baseline) ? baseline.standardise(value) : 0;
    boolean joins = counts && !changed && Math.abs(z) < policy.drift().limit();
    return new SeriesState(
        joins ? quiet.with(ready.quiet(), time, value) : ready.quiet(),
        counted,
        counts ? add(ready.sums(), z) : ready.sums(),
        changed ? firstChanged(state, time) : SeriesState.NEVER,
        window);
  }

  /**
   * The state after a documented change: a new quiet period begins with the next reading, and until
   * it has enough values there is no drift. The recent past stays, so that a trend goes on.
   *
   * @param at clinical time of the change
   * @throws IllegalArgumentException if the series has a reading later than {@code at}
   */
  public SeriesState restart(SeriesState state, Instant at) {
    refuseBefore(state, at.toEpochMilli());
    return new SeriesState(
        Forming.EMPTY, SeriesState.NEVER, Cusum.ZERO, SeriesState.NEVER, state.window());
  }

  /** How far the newest reading lies from the baseline; empty while there is no baseline. */
  public Optional<Drift> drift(SeriesState state, Reading newest) {
    var rule = rule(newest);
    double value = rule.level(newest.value());
    var baseline = quiet.baseline(rule, state.quiet());
    if (Double.isNaN(value) || !measurable(rule, baseline)) {
      return Optional.empty();
    }
    double z = baseline.standardise(value);
    double sum = state.sums().larger();
    double centre = baseline.centre();
    boolean step = Math.abs(z) >= policy.drift().limit() && rule.worse(z, centre, value);
    boolean creep = Math.abs(sum) >= policy.drift().decision() && rule.worse(sum, centre, value);
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
    var rule = rule(newest);
    var baseline = quiet.baseline(rule, state.quiet());
    if (state.changedSince() == SeriesState.NEVER || baseline == null) {
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

  /**
   * The patient's own recent level before {@code at}: the median of the values that the policy's
   * window holds; empty on too few. For the rise of a score.
   */
  public Optional<BigDecimal> recentLevel(SeriesState state, Instant at) {
    return trends.level(state.window(), at.toEpochMilli(), policy.level());
  }

  private boolean measurable(SeriesRule rule, @Nullable Baseline baseline) {
    return rule.drifts() && quiet.enough(baseline);
  }

  private Cusum add(Cusum sums, double z) {
    DriftRule drift = policy.drift();
    double step = Math.max(-drift.limit(), Math.min(drift.limit(), z));
    return sums.next(step, drift.allowance()).heldAt(drift.decision());
  }

  private static long firstChanged(SeriesState state, long time) {
    return state.changedSince() == SeriesState.NEVER ? time : state.changedSince();
  }

  private static void refuseBefore(SeriesState state, long time) {
    if (time < state.newest()) {
      throw new IllegalArgumentException("a series goes forward in clinical time only");
    }
  }

  private SeriesRule rule(Reading reading) {
    return rules.getOrDefault(reading.code(), SeriesRule.SCORE);
  }

  private static Map<String, SeriesRule> rules(Catalogue catalogue, ScoringPolicy policy) {
    var rules = new HashMap<String, SeriesRule>();
    catalogue.entries().forEach(entry -> rules.put(entry.code(), new SeriesRule(entry)));
    for (var rate : policy.rates()) {
      for (var code : List.of(rate.amount(), rate.hours())) {
        if (!rules.containsKey(code)) {
          throw new IllegalArgumentException(
              rate.code() + " is made of " + code + ", which the catalogue lacks");
        }
      }
      if (rules.put(rate.code(), new SeriesRule(rate.entry())) != null) {
        throw new IllegalArgumentException(rate.code() + " is a code of the catalogue");
      }
    }
    return rules;
  }
}
