package org.driftward.scoring.core.timeline;

import java.time.Instant;

/**
 * Which judge is in office at a clinical time. A new policy or score definition takes effect from a
 * stated time, and what was taken before is judged as it always was. Made by {@link Editions}: of
 * two editions whose time has come the one adopted later is in office.
 */
@FunctionalInterface
interface Rules {

  Judge at(Instant takenAt);
}
