package org.driftward.scoring.definition;

import java.math.BigDecimal;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.ScoreTables;
import org.driftward.scoring.core.score.Applicability.Ages;
import org.driftward.scoring.core.score.Band;
import org.driftward.scoring.core.score.Input;
import org.driftward.scoring.core.score.Row;
import org.driftward.scoring.core.score.ScoreBook;
import org.jspecify.annotations.Nullable;

/** Reads the cells of a table out of the score definitions. Immutable. */
public final class PrintedTables implements ScoreTables {

  private final ScoreBook book;

  public PrintedTables(ScoreBook book) {
    this.book = book;
  }

  public static PrintedTables shipped(Catalogue catalogue) {
    return new PrintedTables(ScoreBooks.shipped(catalogue));
  }

  @Override
  public List<Cell> cells(
      String score, String version, String input, int oxygenScale, @Nullable Integer ageYears) {
    return book.definitions().stream()
        .filter(one -> one.id().equals(score) && one.version().equals(version))
        .flatMap(one -> one.rows().stream())
        .filter(row -> row.input().code().equals(input) && row.input().words().isEmpty())
        .filter(row -> serves(row, oxygenScale, ageYears))
        .flatMap(PrintedTables::cells)
        .toList();
  }

  private static Stream<Cell> cells(Row row) {
    return row.bands().stream()
        .filter(band -> band.given().isEmpty())
        .sorted(Comparator.comparingLong(Band::from))
        .map(band -> cell(band, row.input()));
  }

  private static boolean serves(Row row, int oxygenScale, @Nullable Integer ageYears) {
    boolean scale = row.oxygenScale() == 0 || row.oxygenScale() == oxygenScale;
    boolean age = row.ages().equals(Ages.ALL) || (ageYears != null && row.ages().holds(ageYears));
    return scale && age;
  }

  private static Cell cell(Band band, Input input) {
    return new Cell(
        band.from() == Long.MIN_VALUE ? null : value(band.from(), input),
        band.upto() == Long.MAX_VALUE ? null : value(band.upto(), input),
        band.points(),
        band.text());
  }

  private static BigDecimal value(long steps, Input input) {
    return BigDecimal.valueOf(steps, input.resolution().digits());
  }
}
