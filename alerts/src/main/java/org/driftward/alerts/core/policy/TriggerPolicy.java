package org.driftward.alerts.core.policy;

import java.time.Duration;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.Set;
import java.util.TreeSet;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/**
 * What raises concern, and how much. A rule that is null is switched off.
 *
 * @param responses what each score asks for; one that is not named asks for nothing
 * @param possible a score whose missing inputs may make it reach a threshold
 * @param drift a value far from the patient's own baseline, in several sets running
 * @param accumulated small drift in one direction that adds up
 * @param trend a significant trend that reaches its threshold soon
 * @param changed findings that changed for the worse, by body function
 * @param firstSet how long after admission somebody who was never measured is due
 * @param overdue steps of lateness, earliest first
 * @param partial sets that lack core observations, several running
 * @param worry of whoever is at the bedside, which needs no number
 * @param worries findings by which a set of observations says that somebody is worried
 */
public record TriggerPolicy(
    List<ScoreResponse> responses,
    @Nullable PossibleRule possible,
    @Nullable DriftRule drift,
    @Nullable AccumulatedRule accumulated,
    @Nullable TrendRule trend,
    Map<Group, Level> changed,
    Duration firstSet,
    List<OverdueStep> overdue,
    @Nullable PartialRule partial,
    Level worry,
    Set<String> worries) {

  /**
   * @param reaching thresholds of this level or above are worth asking for
   * @param set the level at which an incomplete set asks
   * @param spotCheck the level at which less than a set asks
   */
  public record PossibleRule(Level reaching, Asking set, Asking spotCheck) {
    public PossibleRule {
      Objects.requireNonNull(reaching, "reaching");
      Objects.requireNonNull(set, "set");
      Objects.requireNonNull(spotCheck, "spot-check");
    }
  }

  /** The level at which something is asked for that may be an emergency. */
  public enum Asking implements Word {
    /** The one that it may be. */
    AS_REACHED,
    LOW,
    MEDIUM,
    HIGH;

    public Level level(Level reached) {
      return this == AS_REACHED ? reached : Level.valueOf(name());
    }
  }

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
    responses = responses == null ? List.of() : List.copyOf(responses);
    changed = changed == null ? Map.of() : Map.copyOf(changed);
    overdue = overdue == null ? List.of() : List.copyOf(overdue);
    worries = worries == null ? Set.of() : Set.copyOf(worries);
    Objects.requireNonNull(worry, "worry");
    Durations.positive("first-set", firstSet);
    if (responses.isEmpty()) {
      throw new IllegalArgumentException("no score raises concern");
    }
    var ids = new HashSet<String>();
    for (var response : responses) {
      if (!ids.add(response.score())) {
        throw new IllegalArgumentException("two responses to " + response.score());
      }
    }
    var sorted = overdue.stream().sorted(Comparator.comparing(OverdueStep::past)).toList();
    if (!sorted.equals(overdue)) {
      throw new IllegalArgumentException("overdue: the steps are not in order");
    }
  }

  /** What a score asks for, where it asks for anything. */
  public Optional<ScoreResponse> response(String score) {
    return responses.stream().filter(response -> response.score().equals(score)).findFirst();
  }

  /**
   * @param leaders ids of the scores that lead for some patient
   * @throws IllegalStateException if one of them would raise no concern whatever it says
   */
  public void answers(Set<String> leaders) {
    var unanswered = new TreeSet<>(leaders);
    responses.forEach(response -> unanswered.remove(response.score()));
    if (!unanswered.isEmpty()) {
      throw new IllegalStateException(
          "the policy has no response to scores that lead for some patients: "
              + String.join(", ", unanswered));
    }
  }

  private static void atLeastOne(String rule, int sets) {
    if (sets < 1) {
      throw new IllegalArgumentException(rule + ": " + sets + " sets");
    }
  }
}
