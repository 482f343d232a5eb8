package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.driftward.dashboard.core.ScoreLine;

/**
 * A score at a glance. A partial set is never shown as one number: it is both bounds and the word
 * for what that means.
 *
 * @param title as people call the score
 * @param total {@code 7}, or {@code 5–9} where inputs are missing
 * @param note what is wrong with the number, or empty: {@code incomplete, at least 5}
 */
public record ScoreMark(String title, String total, String note) {

  public static ScoreMark of(ScoreLine score) {
    return of(score.title(), score.low(), score.high(), score.complete());
  }

  public static ScoreMark of(String title, BigDecimal low, BigDecimal high, boolean complete) {
    String least = shown(low);
    return new ScoreMark(
        title,
        complete ? least : least + "–" + shown(high),
        complete ? "" : "incomplete, at least " + least);
  }

  /** A ratio is read to two decimals; a total has none. */
  private static String shown(BigDecimal total) {
    return Wording.number(total.setScale(Math.min(2, total.scale()), RoundingMode.HALF_UP));
  }
}
