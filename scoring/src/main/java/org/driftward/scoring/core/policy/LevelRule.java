package org.driftward.scoring.core.policy;

import java.time.Duration;

/**
 * The patient's own recent level of a score: the median of its earlier totals.
 *
 * @param window how far back totals are looked at; not beyond the trend's window
 * @param minimum no level on fewer earlier totals
 */
public record LevelRule(Duration window, int minimum) {

  public LevelRule {
    Require.positive("level window", window);
    Require.between("level minimum", minimum, 1, TrendRule.MOST - 1);
  }
}
