package org.driftward.scoring.core.policy;

import java.time.Duration;

/**
 * Which values make a baseline: the first ones after admission or restart, until {@code maximum}
 * are there or {@code span} has passed, but not before {@code minimum} are there. A value that has
 * already drifted, or changed for the worse, is left out.
 *
 * @param minimum no baseline on fewer values; 3 at least, or a spread says nothing
 * @param maximum no more values than this
 * @param span of the quiet period, from its first value inclusive to its end exclusive
 */
public record QuietRule(int minimum, int maximum, Duration span) {

  /** What the memory of one series can hold. */
  public static final int MOST = 30;

  public QuietRule {
    Require.between("quiet minimum", minimum, 3, MOST);
    Require.between("quiet maximum", maximum, minimum, MOST);
    Require.positive("quiet span", span);
  }
}
