package org.driftward.scoring.core.change;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.core.policy.ScoringPolicy;

/**
 * Compares each patient with themselves. Stateless and thread-safe; the memory of a series is its
 * {@link SeriesState}, which the caller keeps.
 *
 * <p>For each assessment, in the order of clinical time: {@link #derived} gives the findings
 * computed from its own, and {@link #series} for each reading what compares it with those before.
 * Scores are series too: a reading whose code is the score's id, a quantity in {@link #SCORE_UNIT},
 * has a trend and a recent level, and no baseline.
 */
public final class ChangeDetector {

  /** Unit of a score's total, UCUM. */
  public static final String SCORE_UNIT = "{score}";

  private final ScoringPolicy policy;
  private final Derived derived;
  private final Trends trends;

  /** By code; never changed. */
  private final Map<String, SeriesDetector> findings = new HashMap<>();

  private final SeriesDetector scores;

  /**
   * @throws IllegalArgumentException if a rate has a code of the catalogue, or is made of one that
   *     the catalogue does not know
   */
  public ChangeDetector(Catalogue catalogue, ScoringPolicy policy) {
    this.policy = policy;
    this.derived = new Derived(catalogue, policy.rates());
    this.trends = new Trends(policy.trend());
    var quiet = new QuietPeriod(policy.quiet());
    rules(catalogue, policy)
        .forEach(
            (code, rule) -> findings.put(code, new SeriesDetector(rule, policy, quiet, trends)));
    this.scores = new SeriesDetector(SeriesRule.SCORE, policy, quiet, trends);
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

  /** What compares the reading with those before it. */
  public SeriesDetector series(Reading reading) {
    return findings.getOrDefault(reading.code(), scores);
  }

  /**
   * The patient's own recent level before {@code at}: the median of the values that the policy's
   * window holds; empty on too few. For the rise of a score.
   */
  public Optional<BigDecimal> recentLevel(SeriesState state, Instant at) {
    return trends.level(state.window(), at.toEpochMilli(), policy.level());
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
