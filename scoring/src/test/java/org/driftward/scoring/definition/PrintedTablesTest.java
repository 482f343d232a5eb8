package org.driftward.scoring.definition;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.ScoreTables;
import org.driftward.scoring.contract.ScoreTables.Cell;
import org.junit.jupiter.api.Test;

/** Cells checked against: Royal College of Physicians, NEWS2, 2017, chart 1. */
class PrintedTablesTest {

  private static final Catalogue CATALOGUE = Catalogue.shipped();

  private final ScoreTables tables = ScoreTables.shipped(CATALOGUE);

  @Test
  void shouldGiveTheRowAsItIsPrinted() {
    assertThat(inWords("temperature", 1))
        .containsExactly("null-35.0:3", "35.1-36.0:1", "36.1-38.0:0", "38.1-39.0:1", "39.1-null:2");
  }

  @Test
  void shouldGiveTheRowOfThePatientsOxygenScale() {
    assertThat(inWords("oxygen-saturation", 1))
        .containsExactly("null-91:3", "92-93:2", "94-95:1", "96-null:0");
  }

  @Test
  void shouldLeaveOutCellsThatDependOnAnotherInput() {
    assertThat(inWords("oxygen-saturation", 2))
        .containsExactly("null-83:3", "84-85:2", "86-87:1", "88-92:0");
  }

  @Test
  void shouldGiveNothingForWordsAndForAnotherVersion() {
    assertThat(inWords("consciousness", 1)).isEmpty();
    assertThat(tables.cells("news2", "1999", "temperature", 1, 70)).isEmpty();
  }

  private List<String> inWords(String input, int scale) {
    String version =
        ScoreBooks.shipped(CATALOGUE).definitions().stream()
            .filter(one -> one.id().equals("news2"))
            .findFirst()
            .orElseThrow()
            .version();
    return tables.cells("news2", version, input, scale, 70).stream()
        .map(PrintedTablesTest::inWords)
        .toList();
  }

  private static String inWords(Cell cell) {
    return cell.from() + "-" + cell.upto() + ":" + cell.points();
  }
}
