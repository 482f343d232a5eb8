package org.driftward.scoring.core.timeline;

import java.time.Instant;

/**
 * Which judge is in office at a clinical time. A new policy or score definition takes effect from a
 * stated time, and what was taken before is judged as it always was.
 */
@FunctionalInterface
public interface Rules {

  Judge at(Instant takenAt);

  /** One judge for all times. */
  static Rules always(Judge judge) {
    return takenAt -> judge;
  }
}
