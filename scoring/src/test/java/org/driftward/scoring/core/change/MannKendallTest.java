package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.scoring.core.change.RobustTest.numbers;

import java.util.List;
import java.util.stream.Collectors;
import java.util.stream.IntStream;
import net.jqwik.api.ForAll;
import net.jqwik.api.Property;
import net.jqwik.api.constraints.IntRange;
import net.jqwik.api.constraints.Size;
import org.hipparchus.stat.correlation.KendallsCorrelation;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MannKendallTest {

  /**
   * Row 1: College of the Holy Cross, "Mann-Kendall by hand": S = 54, Z = 2.9058, one-sided p about
   * .0018. Row 2: S = -5 in Wisconsin Administrative Code, Mann-Kendall table; the rest computed.
   */
  @ParameterizedTest
  @CsvSource({
    "12.9 14.8 13.2 15.7 13.8 15.6 12.9 11.0 17.3 15.9 19.0 18.3 20.1 21.7, 54, 332.66667, 2.9058, .00366",
    "100 50 85 75 50, -5, 15.66667, -1.010582, .31222"
  })
  void shouldGiveThePublishedStatisticWithTies(
      String data, int s, double variance, double z, double p) {
    var test = MannKendall.of(numbers(data));

    assertThat(test.s()).isEqualTo(s);
    assertThat(test.variance()).isCloseTo(variance, within(1e-5));
    assertThat(test.z()).isCloseTo(z, within(5e-5));
    assertThat(test.pValue()).isCloseTo(p, within(5e-6));
  }

  /**
   * Row 1: data of Hollander, Wolfe and Chicken, example 9.1. Row 2: data of Sen 1968. Statistics
   * computed by enumeration.
   */
  @ParameterizedTest
  @CsvSource({
    "1.26 1.27 1.12 1.16 1.03, -6, 16.666667, -1.224745, 0.233333333",
    "9 15 19 20 45 55 78,      21, 44.333333,  3.003757, 0.000396825"
  })
  void shouldBeExactForFewValuesWithoutTies(
      String data, int s, double variance, double z, double p) {
    var test = MannKendall.of(numbers(data));

    assertThat(test.s()).isEqualTo(s);
    assertThat(test.variance()).isCloseTo(variance, within(1e-6));
    assertThat(test.z()).isCloseTo(z, within(1e-6));
    assertThat(test.pValue()).isCloseTo(p, within(1e-9));
  }

  /**
   * One-sided P(S >= s) without ties, by enumeration of all orders; the same as the small-sample
   * tables in Gilbert, Statistical Methods for Environmental Pollution Monitoring, table A18.
   */
  @ParameterizedTest
  @CsvSource({
    "4, 4, .1667",
    "4, 6, .0417",
    "5, 6, .1167",
    "5, 8, .0417",
    "5, 10, .0083",
    "6, 7, .1361",
    "6, 9, .0681",
    "6, 11, .0278",
    "6, 13, .0083",
    "7, 11, .0681",
    "7, 13, .0345",
    "7, 15, .0151",
    "7, 17, .0054",
    "8, 12, .0894",
    "8, 14, .0543",
    "8, 16, .0305",
    "8, 18, .0156",
    "8, 20, .0071",
    "9, 16, .0597",
    "9, 18, .0376",
    "9, 20, .0223",
    "9, 22, .0124",
    "9, 24, .0063",
    "10, 19, .0542",
    "10, 21, .0363",
    "10, 23, .0233",
    "10, 25, .0143",
    "10, 27, .0083"
  })
  void shouldFollowTheExactTable(int n, int s, double oneSided) {
    var test = MannKendall.of(orderWith(n, s));

    assertThat(test.s()).isEqualTo(s);
    assertThat(test.pValue() / 2).isCloseTo(oneSided, within(5e-5));
  }

  /** With four values not even a strict rise is below 0.05: clinical reference, computed. */
  @Test
  void shouldNotFindSignificanceInFourValues() {
    assertThat(MannKendall.of(new double[] {1, 2, 3, 4}).pValue()).isCloseTo(.0833, within(5e-5));
  }

  @Test
  void shouldSeeNoTrendWhereNothingMoves() {
    var test = MannKendall.of(new double[] {7, 7, 7, 7, 7, 7});

    assertThat(test).isEqualTo(new MannKendall(6, 0, 0, false));
    assertThat(test.pValue()).isEqualTo(1);
    assertThat(test.below(0.9, 0.1)).isFalse();
  }

  /** From eleven values on the approximation takes over; it is close to the exact tail there. */
  @Test
  void shouldApproximateFromElevenValues() {
    var test = MannKendall.of(IntStream.rangeClosed(1, 11).asDoubleStream().toArray());

    assertThat(test.z()).isCloseTo(54 / Math.sqrt(165), within(1e-12));
    assertThat(test.pValue()).isCloseTo(2.6e-5, within(1e-6));
  }

  /**
   * Independent library: Kendall's tau-b of Hipparchus against time is S divided by the geometric
   * mean of the pairs that are not tied.
   */
  @Property
  void shouldAgreeWithKendallsTau(
      @ForAll @Size(min = 5, max = 24) List<@IntRange(min = 0, max = 40) Integer> data) {
    var values = data.stream().mapToDouble(Integer::doubleValue).toArray();
    int n = values.length;
    var time = IntStream.range(0, n).asDoubleStream().toArray();
    double pairs = n * (n - 1) / 2.0;
    double untied =
        IntStream.range(0, n)
            .mapToLong(i -> IntStream.range(0, i).filter(j -> values[i] != values[j]).count())
            .sum();

    double tau = untied == 0 ? 0 : new KendallsCorrelation().correlation(time, values);

    assertThat(MannKendall.of(values).s() / Math.sqrt(pairs * Math.max(1, untied)))
        .isCloseTo(tau, within(1e-9));
  }

  /**
   * The textbook's correction, t(t-1)(2t+5) for every group of t equal values (Kendall 1975;
   * Gilbert 1987), against ours, which never groups.
   */
  @Property
  void shouldCorrectTheVarianceAsTheTextbookDoes(
      @ForAll @Size(min = 5, max = 24) List<@IntRange(min = 0, max = 6) Integer> data) {
    double n = data.size();
    double ties =
        data.stream()
            .collect(Collectors.groupingBy(value -> value, Collectors.counting()))
            .values()
            .stream()
            .mapToDouble(t -> t * (t - 1) * (2 * t + 5))
            .sum();

    var test = MannKendall.of(data.stream().mapToDouble(Integer::doubleValue).toArray());

    assertThat(test.variance()).isCloseTo((n * (n - 1) * (2 * n + 5) - ties) / 18, within(1e-9));
  }

  /** A rising order of n values with neighbours exchanged until S has come down to s. */
  private static double[] orderWith(int n, int s) {
    var order = IntStream.rangeClosed(1, n).asDoubleStream().toArray();
    int exchanges = (n * (n - 1) / 2 - s) / 2;
    for (int pass = 0; pass < n && exchanges > 0; pass++) {
      for (int i = 0; i + 1 < n && exchanges > 0; i++) {
        if (order[i] < order[i + 1]) {
          double swap = order[i];
          order[i] = order[i + 1];
          order[i + 1] = swap;
          exchanges--;
        }
      }
    }
    return order;
  }

  /**
   * Kendall's table: S of 29 among ten values has a two-sided p of .0092; the normal one is .0123.
   */
  @Test
  void shouldDecideByTheExactChanceWhereItIsKnown() {
    double quantileOf1Percent = 2.5758;
    var exact = MannKendall.of(orderWith(10, 29));

    assertThat(exact.below(.01, quantileOf1Percent)).isTrue();
    assertThat(Math.abs(exact.z())).isLessThan(quantileOf1Percent);
    assertThat(new MannKendall(10, 29, exact.variance(), false).below(.01, quantileOf1Percent))
        .isFalse();
  }
}
