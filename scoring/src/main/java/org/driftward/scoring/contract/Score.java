package org.driftward.scoring.contract;

import java.math.BigDecimal;
import java.util.List;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * One early-warning score of one encounter at one moment.
 *
 * @param id of the score definition, for example {@code news2}
 * @param title as people call it
 * @param version of the score definition
 * @param low the lowest total that the recorded inputs allow
 * @param high the highest; equal to {@code low} when the set is complete
 * @param complete whether every input is present and none is outdated
 * @param risk the risk class of {@code low}: at least this. Where a lower total is the worse one
 *     (the Glasgow Coma Scale), that of {@code high}
 * @param riskIfWorst the risk class of the other end
 * @param single the most points that any single recorded input earned; 0 where a lower total is the
 *     worse one, and for ratios
 * @param usual the patient's own recent level of {@code low}: the median over the policy's window
 *     before this moment; null with too few earlier sets
 * @param missing codes of the inputs that are absent, or too old to count at all: measuring them
 *     settles the score
 * @param outdated codes of the inputs that still count with their last value, which is older than
 *     the interval that was in force between sets: to be measured again before this reads as now
 * @param inputs the inputs that are present, in the order of the published table
 */
public record Score(
    String id,
    String title,
    String version,
    BigDecimal low,
    BigDecimal high,
    boolean complete,
    String risk,
    String riskIfWorst,
    int single,
    @Nullable BigDecimal usual,
    List<String> missing,
    List<String> outdated,
    List<ScoredInput> inputs) {
  public Score {
    Objects.requireNonNull(id, "id");
    Objects.requireNonNull(version, "version");
    missing = List.copyOf(missing);
    // Snapshots of before this field have none.
    outdated = outdated == null ? List.of() : List.copyOf(outdated);
    inputs = List.copyOf(inputs);
    if (low.compareTo(high) > 0) {
      throw new IllegalArgumentException(id + ": low " + low + " is above high " + high);
    }
    if (complete != (missing.isEmpty() && outdated.isEmpty())) {
      throw new IllegalArgumentException(
          id + ": complete " + complete + ", missing " + missing + ", outdated " + outdated);
    }
  }

  /** A score of which no input is outdated. */
  public Score(
      String id,
      String title,
      String version,
      BigDecimal low,
      BigDecimal high,
      boolean complete,
      String risk,
      String riskIfWorst,
      int single,
      @Nullable BigDecimal usual,
      List<String> missing,
      List<ScoredInput> inputs) {
    this(
        id,
        title,
        version,
        low,
        high,
        complete,
        risk,
        riskIfWorst,
        single,
        usual,
        missing,
        List.of(),
        inputs);
  }

  /** How far {@code low} lies above the patient's usual level; null where that is unknown. */
  public @Nullable BigDecimal rise() {
    return usual == null ? null : low.subtract(usual);
  }

  /** The same score with the patient's own recent level. */
  public Score withUsual(@Nullable BigDecimal level) {
    return new Score(
        id,
        title,
        version,
        low,
        high,
        complete,
        risk,
        riskIfWorst,
        single,
        level,
        missing,
        outdated,
        inputs);
  }
}
