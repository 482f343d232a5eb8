package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.scoring.core.change.RobustTest.numbers;

import java.util.Arrays;
import java.util.List;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.DoubleRange;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.hipparchus.stat.descriptive.rank.Median;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class TheilSenTest {

  /**
   * Row 1: Sen 1968, numerical illustration. Row 2: Hollander, Wolfe and Chicken, example 9.1. Row
   * 3: after Helsel and Hirsch, data from memory, result computed: one wild value does not count.
   */
  @ParameterizedTest
  @CsvSource({
    "1 2 3 4 10 12 18, 9 15 19 20 45 55 78, 4",
    "1 2 3 4 5, 1.26 1.27 1.12 1.16 1.03, -0.05625",
    "1 2 3 4 5 6 7, 1 2 3 4 5 16 7, 1"
  })
  void shouldGiveThePublishedSlope(String times, String values, double slope) {
    assertThat(TheilSen.of(numbers(times), numbers(values)).slope())
        .isCloseTo(slope, within(1e-12));
  }

  /** Sen 1968: the 93 % interval runs from the 4th to the 18th of 21 slopes, 26/7 to 35/8. */
  @Test
  void shouldGiveThePublishedInterval() {
    var values = numbers("9 15 19 20 45 55 78");
    var slopes = TheilSen.of(numbers("1 2 3 4 10 12 18"), values);
    double normalQuantileOf93Percent = 1.811911;

    int rank = slopes.rankOfLowerEnd(normalQuantileOf93Percent, MannKendall.of(values).variance());

    assertThat(rank).isEqualTo(4);
    assertThat(slopes.ranked(rank)).isCloseTo(26 / 7.0, within(1e-12));
    assertThat(slopes.ranked(slopes.pairs() + 1 - rank)).isCloseTo(35 / 8.0, within(1e-12));
  }

  @Test
  void shouldNotReachBeyondTheSteepestSlopes() {
    var slopes = TheilSen.of(numbers("1 2 3"), numbers("1 2 4"));

    assertThat(slopes.rankOfLowerEnd(10, 100)).isEqualTo(1);
  }

  /** Independent library: the median of Hipparchus. */
  @Property
  void shouldSelectWhatSortingWouldFind(
      @ForAll @Size(min = 1, max = 300) List<@DoubleRange(min = -9, max = 9) Double> numbers,
      @ForAll @IntRange(min = 0, max = 299) int place) {
    var data = numbers.stream().mapToDouble(Double::doubleValue).toArray();
    int k = place % data.length;
    var sorted = data.clone();
    Arrays.sort(sorted);

    assertThat(Selection.ranked(data.clone(), k)).isCloseTo(sorted[k], within(0.0));
    assertThat(Selection.median(data.clone()))
        .isCloseTo(new Median().evaluate(data), within(1e-12));
  }

  /** Equal slopes are common: pulse rates are whole numbers. */
  @Property
  void shouldSelectAmongEqualNumbers(
      @ForAll @Size(min = 1, max = 60) List<@IntRange(min = -1, max = 1) Integer> numbers,
      @ForAll @IntRange(min = 0, max = 59) int place) {
    var data = numbers.stream().mapToDouble(Integer::doubleValue).toArray();
    int k = place % data.length;
    var sorted = data.clone();
    Arrays.sort(sorted);

    assertThat(Selection.ranked(data, k)).isEqualTo(sorted[k]);
  }
}
