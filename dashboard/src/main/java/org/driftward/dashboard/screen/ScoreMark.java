package org.driftward.dashboard.screen;

import java.math.BigDecimal;
import java.util.List;
import org.driftward.scoring.contract.Score;
import org.jspecify.annotations.Nullable;

/**
 * A score at a glance. A partial set is never shown as one number: it is both bounds and the word
 * for what that means.
 *
 * @param title as people call the score
 * @param total {@code 7}, or {@code 5–9} where inputs are missing
 * @param note what is wrong with the number, or empty: {@code incomplete, at least 5}
 * @param missing codes in words of what to measure to settle it
 * @param rise over the patient's usual level in words, or empty
 */
public record ScoreMark(
    String title, String total, String note, List<String> missing, String rise, DriftLine line) {

  public static ScoreMark of(Score score) {
    String low = Wording.number(score.low());
    return new ScoreMark(
        score.title(),
        score.complete() ? low : low + "–" + Wording.number(score.high()),
        score.complete() ? "" : "incomplete, at least " + low,
        score.missing().stream().map(Wording::sentence).toList(),
        riseInWords(score.usual(), score.rise()),
        DriftLine.of(score.low(), score.high(), score.usual()));
  }

  private static String riseInWords(@Nullable BigDecimal usual, @Nullable BigDecimal rise) {
    if (usual == null || rise == null) {
      return "";
    }
    return rise.signum() == 0
        ? "as usual"
        : Wording.signed(rise.doubleValue(), 1) + " on usual " + Wording.number(usual);
  }
}
