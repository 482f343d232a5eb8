package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class TrailTest {

  @Test
  void shouldDrawNothingBeforeTheSecondSet() {
    assertThat(Trail.of(Sample.totals()).path()).isEmpty();
    assertThat(Trail.of(Sample.totals(3)).path()).isEmpty();
  }

  @Test
  void shouldDrawMorePointsHigherAndLaterSetsFurtherRight() {
    var dots = Trail.of(Sample.totals(1, 2, 6)).dots();
    assertThat(dots).extracting(Trail.Dot::x).containsExactly(0.0, Trail.WIDTH / 2, Trail.WIDTH);
    assertThat(dots.get(2).low()).isLessThan(dots.get(0).low());
  }

  @Test
  void shouldShowBothBoundsOfAPartialSet() {
    var newest = Trail.of(Sample.totals(1, -4)).newest();
    assertThat(newest.sure()).isFalse();
    assertThat(newest.high()).isLessThan(newest.low());
  }

  @Test
  void shouldStayInsideItsBox() {
    assertThat(Trail.of(Sample.totals(0, 20)).dots())
        .allSatisfy(dot -> assertThat(dot.low()).isBetween(0.0, Trail.HEIGHT));
  }
}
