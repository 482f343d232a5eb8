package org.driftward.scoring.contract;

import java.time.Instant;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * The facts that hold for an encounter at one time, whoever vouches for them.
 *
 * @param oxygenScale 1 or 2
 * @param populations groups that score definitions ask for; empty for none
 * @param usualConsciousness where the patient's usual word is not alert, else null
 * @param ceiling the agreed ceiling of care in words, or null
 */
public record StandingFacts(
    int oxygenScale,
    List<String> populations,
    @Nullable String usualConsciousness,
    @Nullable String ceiling) {

  /** Where nobody has signed anything. */
  public static final StandingFacts NONE = new StandingFacts(1, List.of(), null, null);

  public StandingFacts {
    populations = List.copyOf(populations);
  }

  /** Those of the newest plan, or none. */
  public static StandingFacts of(@Nullable CarePlan newest, Instant time) {
    return newest == null ? NONE : newest.standingAt(time);
  }
}
