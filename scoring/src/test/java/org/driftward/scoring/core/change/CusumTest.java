package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.scoring.core.change.RobustTest.numbers;

import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.Test;

class CusumTest {

  private static final String NIST =
      "324.925 324.675 324.725 324.350 325.350 325.225 324.125 324.525 325.225 324.600 324.625"
          + " 325.150 328.325 327.250 327.825 328.500 326.675 327.775 326.875 328.350";

  /** NIST/SEMATECH e-Handbook 6.3.2.3: T = 325, k = 0.3175, h = 4.1959; printed to two decimals. */
  @Test
  void shouldFollowTheHandbook() {
    var arms = run(NIST, 325, 0.3175);

    assertThat(arms.stream().map(Cusum::up).toList())
        .usingElementComparator(near(0.005))
        .containsExactly(
            0., 0., 0., 0., .03, 0., 0., 0., 0., 0., 0., 0., 3.01, 4.94, 7.45, 10.63, 11.99, 14.44,
            16.00, 19.04);
    assertThat(arms.stream().map(Cusum::down).toList())
        .usingElementComparator(near(0.005))
        .containsExactly(
            0., .01, 0., .33, 0., 0., .56, .72, .17, .25, .31, 0., 0., 0., 0., 0., 0., 0., 0., 0.);
    assertThat(firstAbove(arms, 4.1959)).isEqualTo(14);
  }

  /**
   * Montgomery, Introduction to Statistical Quality Control, tables 9.1 and 9.2: T = 10, k = 0.5, h
   * = 5; the sum passes h at the 29th value.
   */
  @Test
  void shouldFollowMontgomery() {
    var arms =
        run(
            "9.45 7.99 9.29 11.66 12.16 10.18 8.04 11.46 9.20 10.34 9.03 11.47 10.51 9.40 10.08"
                + " 9.37 10.62 10.31 8.52 10.84 10.90 9.33 12.29 11.50 10.60 11.08 10.38 11.62"
                + " 11.31 10.52",
            10,
            0.5);

    assertThat(arms.stream().map(Cusum::up).toList())
        .usingElementComparator(near(0.005))
        .containsExactly(
            0., 0., 0., 1.16, 2.82, 2.50, .04, 1.00, 0., 0., 0., .97, .98, 0., 0., 0., .12, 0., 0.,
            .34, .74, 0., 1.79, 2.79, 2.89, 3.47, 3.35, 4.47, 5.28, 5.30);
    assertThat(firstAbove(arms, 5)).isEqualTo(29);
  }

  /** Montgomery and Runger, Applied Statistics, tables 16-7 and 16-8: T = 99, K = 1, no signal. */
  @Test
  void shouldFollowMontgomeryAndRunger() {
    var arms =
        run(
            "102.0 94.8 98.3 98.4 102.0 98.5 99.0 97.7 100.0 98.1 101.3 98.7 101.1 98.4 97.0 96.7"
                + " 100.3 101.4 97.2 101.0",
            99,
            1);

    assertThat(arms.stream().map(Cusum::up).toList())
        .usingElementComparator(near(1e-9))
        .containsExactly(
            2., 0., 0., 0., 2., .5, 0., 0., 0., 0., 1.3, 0., 1.1, 0., 0., 0., .3, 1.7, 0., 1.);
    assertThat(arms.stream().map(Cusum::down).toList())
        .usingElementComparator(near(1e-9))
        .containsExactly(
            0., 3.2, 2.9, 2.5, 0., 0., 0., .3, 0., 0., 0., 0., 0., 0., 1., 2.3, 0., 0., .8, 0.);
    assertThat(firstAbove(arms, 10)).isZero();
  }

  @Test
  void shouldShowTheLargerArmWithItsSign() {
    assertThat(new Cusum(2, 1).larger()).isEqualTo(2);
    assertThat(new Cusum(1, 2).larger()).isEqualTo(-2);
    assertThat(new Cusum(1.5, 1.5).larger()).isEqualTo(1.5);
  }

  @Test
  void shouldHoldEachArmAtTheLimit() {
    assertThat(new Cusum(7, 6).heldAt(5)).isEqualTo(new Cusum(5, 5));
    assertThat(new Cusum(5, 4).heldAt(5)).isEqualTo(new Cusum(5, 4));
  }

  private static List<Cusum> run(String data, double target, double k) {
    var arms = new ArrayList<Cusum>();
    var cusum = Cusum.ZERO;
    for (double x : numbers(data)) {
      cusum = cusum.next(x - target, k);
      arms.add(cusum);
    }
    return arms;
  }

  /** Counted from 1; 0 for never. */
  private static int firstAbove(List<Cusum> arms, double limit) {
    for (int i = 0; i < arms.size(); i++) {
      if (arms.get(i).up() > limit || arms.get(i).down() > limit) {
        return i + 1;
      }
    }
    return 0;
  }

  private static java.util.Comparator<Double> near(double tolerance) {
    return (a, b) -> Math.abs(a - b) <= tolerance + 1e-12 ? 0 : Double.compare(a, b);
  }

  @Test
  void shouldStartFromNothing() {
    assertThat(Cusum.ZERO.next(0.5, 0.5)).isEqualTo(Cusum.ZERO);
    assertThat(Cusum.ZERO.next(0.75, 0.5).up()).isCloseTo(0.25, within(1e-12));
  }
}
