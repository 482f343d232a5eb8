package org.driftward.scoring.core.compare;

import java.time.Instant;
import org.jspecify.annotations.Nullable;

/**
 * One thing that two judgements of the same moment say differently.
 *
 * @param assessment id of the assessment that made the moment
 * @param what a kind, a colon and a code, for example {@code score:news2}; {@code due} and {@code
 *     leading} stand alone
 * @param before or null where nothing was said
 * @param after or null where nothing is said any more
 */
public record Difference(
    String encounter,
    String assessment,
    Instant asOf,
    String what,
    @Nullable String before,
    @Nullable String after) {

  /** The part of {@code what} before the colon. */
  public String kind() {
    int colon = what.indexOf(':');
    return colon < 0 ? what : what.substring(0, colon);
  }

  /** Which moment, never what is said of the patient. */
  @Override
  public String toString() {
    return "Difference[" + assessment + " " + what + "]";
  }
}
