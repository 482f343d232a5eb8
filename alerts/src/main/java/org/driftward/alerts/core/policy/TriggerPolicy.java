package org.driftward.alerts.core.policy;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * What raises concern, and how much. A rule that is null is switched off.
 *
 * @param scores thresholds on totals
 * @param single a single input that scores this many points
 * @param rise of the leading score over the patient's own usual level
 * @param possible an incomplete set whose score may reach a threshold
 * @param drift a value far from the patient's own baseline, in several sets running
 * @param accumulated small drift in one direction that adds up
 * @param trend a significant trend that reaches its threshold soon
 * @param changed findings that changed for the worse, by body function
 * @param overdue steps of lateness, earliest first
 * @param partial sets that lack core observations, several running
 * @param worry of a nurse, which needs no number
 */
public record TriggerPolicy(
    List<ScoreRule> scores,
    @Nullable SingleRule single,
    @Nullable RiseRule rise,
    @Nullable PossibleRule possible,
    @Nullable DriftRule drift,
    @Nullable AccumulatedRule accumulated,
    @Nullable TrendRule trend,
    Map<Group, Level> changed,
    List<OverdueStep> overdue,
    @Nullable PartialRule partial,
    Level worry) {

  /**
   * @param score id of the score, or null for whichever leads
   * @param at this total or more
   */
  public record ScoreRule(@Nullable String score, BigDecimal at, Level level) {}

  public record SingleRule(int points, Level level) {}

  public record RiseRule(BigDecimal by, Level level) {}

  /**
   * @param reaching thresholds of this level or above are worth asking for
   */
  public record PossibleRule(Level reaching, Level level) {}

  /**
   * @param sets how many running
   */
  public record DriftRule(int sets, Level level) {
    public DriftRule {
      atLeastOne("drift", sets);
    }
  }

  /**
   * @param limit of the accumulated standardised drift, the {@code h} of a tabular CUSUM
   */
  public record AccumulatedRule(double limit, Level level) {}

  /**
   * @param horizon how far ahead a projected crossing counts
   */
  public record TrendRule(Duration horizon, Level level) {
    public TrendRule {
      Durations.positive("horizon", horizon);
    }
  }

  /**
   * @param past share of the interval that has passed since the set was due
   */
  public record OverdueStep(double past, Level level) {
    public OverdueStep {
      if (!(past >= 0)) {
        throw new IllegalArgumentException("overdue: " + past + " of the interval");
      }
    }
  }

  /**
   * @param sets how many running
   */
  public record PartialRule(int sets, Level level) {
    public PartialRule {
      atLeastOne("partial", sets);
    }
  }

  public TriggerPolicy {
    scores = List.copyOf(scores);
    changed = changed == null ? Map.of() : Map.copyOf(changed);
    overdue = overdue == null ? List.of() : List.copyOf(overdue);
    if (scores.isEmpty()) {
      throw new IllegalArgumentException("no score raises concern");
    }
    var sorted = overdue.stream().sorted(Comparator.comparing(OverdueStep::past)).toList();
    if (!sorted.equals(overdue)) {
      throw new IllegalArgumentException("overdue: the steps are not in order");
    }
  }

  private static void atLeastOne(String rule, int sets) {
    if (sets < 1) {
      throw new IllegalArgumentException(rule + ": " + sets + " sets");
    }
  }
}
