package org.driftward.scoring.contract;

import java.math.BigDecimal;
import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.definition.PrintedTables;
import org.jspecify.annotations.Nullable;

/** The published tables behind the scores, for drawing them behind a chart. Thread-safe. */
public interface ScoreTables {

  /**
   * One cell of a published table.
   *
   * @param from lowest value in it, in the input's unit, or null if open
   * @param upto highest value in it, or null if open
   * @param text as printed, for example {@code 21 to 24}
   */
  record Cell(@Nullable BigDecimal from, @Nullable BigDecimal upto, int points, String text) {}

  /**
   * The cells of one input for one patient, lowest first. Cells that hold only together with
   * another input are left out, and so may leave gaps.
   *
   * @param score id of the score
   * @param version of its definition; another one's cells are never given
   * @param input code of the input
   * @param oxygenScale 1 or 2
   * @param ageYears completed years, or null where unknown
   * @return empty for a score, version or input not known here, and for words
   */
  List<Cell> cells(
      String score, String version, String input, int oxygenScale, @Nullable Integer ageYears);

  /** Those of the definitions that ship with the application. */
  static ScoreTables shipped(Catalogue catalogue) {
    return PrintedTables.shipped(catalogue);
  }
}
