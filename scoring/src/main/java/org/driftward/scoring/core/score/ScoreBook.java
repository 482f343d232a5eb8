package org.driftward.scoring.core.score;

import java.time.Duration;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SortedSet;
import java.util.TreeSet;
import java.util.function.Function;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.core.Picture;
import org.jspecify.annotations.Nullable;

/**
 * The score definitions in force. Immutable, thread-safe.
 *
 * <p>What {@link Score} does not say by itself:
 *
 * <ul>
 *   <li>An input that is absent, outdated, in a foreign unit or contradicted is missing: it is
 *       never scored. The bounds then run over everything it might be, and are exact where inputs
 *       are shared by several rows. Inputs derived from one another (a mean pressure beside its
 *       systolic) are taken as independent, so there the bounds may be wider than they must, never
 *       narrower.
 *   <li>A row that is known while something it depends on is not is explained with the points it
 *       earns at least.
 *   <li>Where a lower total is the more worrying one, {@code risk} is the class of {@code high},
 *       "at least this", and {@code riskIfWorst} that of {@code low}; {@code single} is then 0.
 *   <li>A ratio with an input missing is left out. It has no bounds worth showing.
 * </ul>
 */
public final class ScoreBook {

  private final List<Plan> plans;
  private final List<ScoreDefinition> definitions;

  /**
   * @throws IllegalArgumentException if two definitions have the same id
   */
  public ScoreBook(List<ScoreDefinition> definitions) {
    this.definitions =
        definitions.stream()
            .sorted(
                Comparator.comparingInt(ScoreDefinition::rank).thenComparing(ScoreDefinition::id))
            .toList();
    var ids = new HashSet<String>();
    for (var definition : this.definitions) {
      if (!ids.add(definition.id())) {
        throw new IllegalArgumentException("score " + definition.id() + " is defined twice");
      }
    }
    this.plans = this.definitions.stream().map(Plan::new).toList();
  }

  /** Every definition, leading ones first. */
  public List<ScoreDefinition> definitions() {
    return definitions;
  }

  /** Every population that some definition asks for. */
  public SortedSet<String> populations() {
    var populations = new TreeSet<String>();
    for (var definition : definitions) {
      populations.addAll(definition.applicability().populations());
    }
    return populations;
  }

  /** Every score that leads for some patient: of some age or none known, in some populations. */
  public SortedSet<String> leaders() {
    var leaders = new TreeSet<String>();
    for (var years : years()) {
      for (var members : subsets(List.copyOf(populations()))) {
        var subject = new Subject(years < 0 ? null : years, 1, members);
        definitions.stream()
            .filter(definition -> definition.applicability().covers(subject))
            .findFirst()
            .ifPresent(definition -> leaders.add(definition.id()));
      }
    }
    return leaders;
  }

  /** One age from every stretch that the definitions tell apart; -1 for an unknown one. */
  private SortedSet<Integer> years() {
    var years = new TreeSet<>(Set.of(-1, 0));
    for (var definition : definitions) {
      var ages = definition.applicability().ages();
      years.add(ages.from());
      if (ages.upto() < Integer.MAX_VALUE) {
        years.add(ages.upto() + 1);
      }
    }
    return years;
  }

  private static List<Set<String>> subsets(List<String> all) {
    var subsets = new ArrayList<Set<String>>(List.of(Set.of()));
    for (var one : all) {
      for (var subset : List.copyOf(subsets)) {
        var larger = new HashSet<>(subset);
        larger.add(one);
        subsets.add(larger);
      }
    }
    return subsets;
  }

  /** As {@link #score(Picture, Subject, Function, History)}, without a past. */
  public List<Score> score(
      Picture picture, Subject subject, Function<String, ? extends @Nullable Duration> validity) {
    return score(picture, subject, validity, History.NONE);
  }

  /**
   * Every score that applies to the subject, the leading one first, as of the picture.
   *
   * @param validity how long a value of a finding serves, by its code; null for the definition's
   *     own
   * @param history of the findings that some inputs sum up
   * @return scores whose {@code usual} is null
   */
  public List<Score> score(
      Picture picture,
      Subject subject,
      Function<String, ? extends @Nullable Duration> validity,
      History history) {
    var sight = new Sight(picture, validity, history);
    var scores = new ArrayList<Score>(plans.size());
    for (var plan : plans) {
      if (plan.definition().applicability().covers(subject)) {
        var score = Reckoning.of(plan, subject, sight);
        if (score != null) {
          scores.add(score);
        }
      }
    }
    return List.copyOf(scores);
  }
}
