package org.driftward.scoring.core.policy;

import java.time.Duration;

/**
 * When a slope counts.
 *
 * @param window how far back values are looked at, the end included
 * @param points no more values than this, the newest ones; bounds memory and time
 * @param minimum no trend on fewer values. At least 5: with 4 a two-sided p below 0.05 is
 *     impossible, the smallest is 0.083
 * @param level a two-sided p below this is significant; also one less the confidence of the
 *     projection's interval
 * @param mention a slope with a two-sided p of this or more is not mentioned at all: chance
 *     explains it
 * @param horizon a crossing that lies further ahead than this is not projected
 */
public record TrendRule(
    Duration window, int points, int minimum, double level, double mention, Duration horizon) {

  /** What the memory of one series can hold. */
  public static final int MOST = 48;

  public TrendRule {
    Require.positive("trend window", window);
    Require.between("trend minimum", minimum, 5, MOST);
    Require.between("trend points", points, minimum, MOST);
    Require.positive("trend level", level);
    Require.positive("trend horizon", horizon);
    if (!(level <= mention && mention <= 1)) {
      throw new IllegalArgumentException(
          "trend level " + level + " and mention " + mention + " are not in order up to 1");
    }
  }
}
