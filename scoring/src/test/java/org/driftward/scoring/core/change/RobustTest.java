package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import org.hipparchus.stat.descriptive.rank.Median;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RobustTest {

  /** Rows 1 and 2: R documentation of {@code mad}, examples. Row 3: from memory, computed. */
  @ParameterizedTest
  @CsvSource({
    "1 2 3 4 5 6 7 8 9,   5, 2.9652",
    "1 2 3 4 5 6 7 8 100, 5, 2.9652",
    "1 1 2 2 4 6 9,       2, 1.4826"
  })
  void shouldGiveThePublishedCentreAndSpread(String data, double median, double spread) {
    var values = numbers(data);

    double centre = Robust.median(values);

    assertThat(centre).isEqualTo(median);
    assertThat(Robust.spread(values, centre)).isCloseTo(spread, within(1e-12));
  }

  /** Independent library: Hipparchus. */
  @Test
  void shouldAgreeWithHipparchusOnTheMedianOfAnEvenCount() {
    double[] values = {9, 1, 4, 2, 7, 6};

    assertThat(Robust.median(values)).isEqualTo(new Median().evaluate(values));
  }

  @Test
  void shouldPickAValueThatOccurs() {
    double[] values = {3, 1, 2, 4};

    assertThat(Robust.lowMedian(values)).isEqualTo(2);
    assertThat(Robust.highMedian(values)).isEqualTo(3);
    assertThat(Robust.lowMedian(new double[] {3, 1, 2})).isEqualTo(2);
    assertThat(Robust.highMedian(new double[] {3, 1, 2})).isEqualTo(2);
  }

  @Test
  void shouldTakeTheFirstOfTheMostFrequent() {
    assertThat(Robust.mode(new double[] {2, 1, 1, 2})).isEqualTo(2);
    assertThat(Robust.mode(new double[] {2, 1, 1})).isEqualTo(1);
    assertThat(Robust.mode(new double[] {2, 2, 1, 1})).isEqualTo(2);
  }

  @Test
  void shouldLeaveItsInputAlone() {
    double[] values = {3, 1, 2};

    Robust.median(values);

    assertThat(values).containsExactly(3, 1, 2);
  }

  @Test
  void shouldRefuseNoValues() {
    assertThatThrownBy(() -> Robust.median(new double[0]))
        .isInstanceOf(IllegalArgumentException.class);
  }

  static double[] numbers(String data) {
    return java.util.Arrays.stream(data.trim().split("[ ,]+"))
        .mapToDouble(Double::parseDouble)
        .toArray();
  }
}
