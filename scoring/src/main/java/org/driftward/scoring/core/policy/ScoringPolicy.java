package org.driftward.scoring.core.policy;

import java.time.Duration;
import java.util.List;
import java.util.Objects;
import java.util.Set;

/**
 * A hospital's settings for scoring. Immutable.
 *
 * @param version names this policy in every snapshot it makes
 * @param validity how long a value serves as an input
 * @param spacing values closer together than this are one look at the patient: of a burst only the
 *     first and the newest count, so that a monitor's stream is not taken for many independent sets
 * @param quiet which values make a baseline
 * @param drift when a distance from the baseline counts
 * @param trend when a slope counts
 * @param level the patient's own recent level of a score
 * @param restarts the documented changes that begin a new quiet period
 * @param observations how often a set of observations is due, and what a set is
 * @param urgent life-threatening values, beside those of the catalogue
 * @param rates amounts over the hours they came in, with a history of their own
 */
public record ScoringPolicy(
    String version,
    Validity validity,
    Duration spacing,
    QuietRule quiet,
    DriftRule drift,
    TrendRule trend,
    LevelRule level,
    Set<Restart> restarts,
    ObservationRule observations,
    List<UrgentValue> urgent,
    List<RateFinding> rates) {

  public ScoringPolicy {
    Objects.requireNonNull(version, "version");
    Objects.requireNonNull(validity, "validity");
    Objects.requireNonNull(quiet, "quiet");
    Objects.requireNonNull(drift, "drift");
    Objects.requireNonNull(trend, "trend");
    Objects.requireNonNull(level, "level");
    Objects.requireNonNull(observations, "observations");
    restarts = Set.copyOf(Objects.requireNonNull(restarts, "restarts"));
    urgent = urgent == null ? List.of() : List.copyOf(urgent);
    rates = List.copyOf(Objects.requireNonNull(rates, "rates"));
    if (Objects.requireNonNull(spacing, "spacing").isNegative()) {
      throw new IllegalArgumentException("spacing " + spacing + " is negative");
    }
    var codes = rates.stream().map(RateFinding::code).toList();
    if (Set.copyOf(codes).size() != codes.size()) {
      throw new IllegalArgumentException("a rate is listed twice in " + codes);
    }
  }

  /** The same settings under another version. */
  public ScoringPolicy withVersion(String other) {
    return new ScoringPolicy(
        other,
        validity,
        spacing,
        quiet,
        drift,
        trend,
        level,
        restarts,
        observations,
        urgent,
        rates);
  }

  /** How long a value of {@code code} serves; past it, it is missing. */
  public Duration validity(String code) {
    return validity.of(code);
  }
}
