package org.driftward.scoring.core.score;

import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * What a score needs to know of the patient besides readings.
 *
 * @param ageYears completed years, or null where the birth date is unknown
 * @param oxygenScale 1, or 2 where a clinician has prescribed it
 * @param populations groups a clinician put the patient in, for example {@code pregnant}
 * @param usualConsciousness the patient's usual word where that is not alert, or null
 */
public record Subject(
    @Nullable Integer ageYears,
    int oxygenScale,
    Set<String> populations,
    @Nullable String usualConsciousness) {

  /** Somebody who usually is alert. */
  public Subject(@Nullable Integer ageYears, int oxygenScale, Set<String> populations) {
    this(ageYears, oxygenScale, populations, null);
  }

  public Subject {
    if (ageYears != null && ageYears < 0) {
      throw new IllegalArgumentException("age of " + ageYears + " years");
    }
    if (oxygenScale != 1 && oxygenScale != 2) {
      throw new IllegalArgumentException("oxygen scale " + oxygenScale + " is neither 1 nor 2");
    }
    populations = Set.copyOf(populations);
  }

  /** An adult or a child on oxygen scale 1, of no special population. */
  public static Subject ofAge(int years) {
    return new Subject(years, 1, Set.of());
  }
}
