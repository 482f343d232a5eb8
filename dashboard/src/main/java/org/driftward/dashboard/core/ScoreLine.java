package org.driftward.dashboard.core;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import org.driftward.scoring.contract.Score;

/**
 * The leading score as a card shows it.
 *
 * @param id of the score definition
 * @param title as people call it
 * @param low the lowest total that the recorded inputs allow
 * @param high the highest; equal to {@code low} when the set is complete
 * @param complete whether every input is present and fresh; if not, it reads "at least"
 * @param risk the risk class of {@code low}: at least this
 * @param riskIfWorst the risk class of {@code high}
 * @param single the most points that any single recorded input earned
 * @param missing codes of the inputs to measure, so that the score is settled
 */
public record ScoreLine(
    String id,
    String title,
    BigDecimal low,
    BigDecimal high,
    boolean complete,
    String risk,
    String riskIfWorst,
    int single,
    List<String> missing) {
  public ScoreLine {
    Objects.requireNonNull(id, "id");
    missing = List.copyOf(missing);
    if (low.compareTo(high) > 0) {
      throw new IllegalArgumentException(id + ": low " + low + " is above high " + high);
    }
  }

  public static ScoreLine of(Score score) {
    return new ScoreLine(
        score.id(),
        score.title(),
        score.low(),
        score.high(),
        score.complete(),
        score.risk(),
        score.riskIfWorst(),
        score.single(),
        score.missing());
  }
}
