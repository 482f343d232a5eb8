package org.driftward.alerts.core.policy;

import java.time.Duration;

/**
 * How long duties last.
 *
 * @param usual where no end is given
 * @param longest that may be planned
 * @param staying of somebody who still acts after the end of duty
 */
public record ShiftRules(Duration usual, Duration longest, Duration staying) {

  public ShiftRules {
    Durations.positive("usual", usual);
    Durations.positive("longest", longest);
    Durations.positive("staying", staying);
    if (usual.compareTo(longest) > 0) {
      throw new IllegalArgumentException("the usual duty " + usual + " is above " + longest);
    }
  }
}
