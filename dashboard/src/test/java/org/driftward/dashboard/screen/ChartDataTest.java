package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.util.List;
import org.driftward.dashboard.screen.ChartData.Band;
import org.driftward.dashboard.screen.ChartData.Point;
import org.driftward.dashboard.screen.ChartData.Row;
import org.driftward.scoring.contract.ScoreTables.Cell;
import org.junit.jupiter.api.Test;

class ChartDataTest {

  private static final Duration DAYS = Duration.ofDays(3);

  private final ChartData data =
      ChartData.of(
          SamplePatient.history(),
          Sample.FINDINGS,
          ChartDataTest::cells,
          Sample.NOW.minus(DAYS),
          Sample.NOW,
          0);

  @Test
  void shouldGiveEachVitalSignARowOfItsOwn() {
    assertThat(data.rows())
        .extracting(Row::code)
        .containsExactly(
            "respiratory-rate",
            "oxygen-saturation",
            "systolic-pressure",
            "diastolic-pressure",
            "heart-rate",
            "temperature");
  }

  @Test
  void shouldRunFromOldToNew() {
    assertThat(data.rows().get(0).points()).extracting(Point::t).isSorted();
  }

  @Test
  void shouldLeaveOutWhatWasRetracted() {
    assertThat(SamplePatient.history().assessments()).hasSize(24);
    assertThat(data.rows().get(0).points()).hasSize(23);
  }

  @Test
  void shouldSayWhatAValueEarned() {
    var rates = data.rows().get(0).points();
    assertThat(rates.get(rates.size() - 1).points()).isEqualTo(2);
    assertThat(data.rows().get(1).points()).extracting(Point::points).containsOnlyNulls();
  }

  @Test
  void shouldLetNeighbouringCellsTouch() {
    // Cells of RCP NEWS2 2017, chart 1: 38.1 to 39.0 and 39.1 or more.
    assertThat(data.rows().get(5).bands())
        .containsExactly(new Band(38.05, 39.05, 1), new Band(39.05, null, 2));
  }

  @Test
  void shouldShowBothBoundsOfAPartialSet() {
    var totals = data.score() == null ? List.<ChartData.Total>of() : data.score().points();
    var newest = totals.get(totals.size() - 1);
    assertThat(newest.high()).isGreaterThan(newest.low());
  }

  private static List<Cell> cells(String input) {
    return input.equals("temperature")
        ? List.of(
            new Cell(new BigDecimal("38.1"), new BigDecimal("39.0"), 1, "38.1 to 39.0"),
            new Cell(new BigDecimal("39.1"), null, 2, "39.1 or more"))
        : List.of();
  }
}
