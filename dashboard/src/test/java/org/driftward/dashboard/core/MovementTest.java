package org.driftward.dashboard.core;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.at;
import static org.driftward.dashboard.Samples.snapshot;

import java.math.BigDecimal;
import java.util.List;
import org.driftward.dashboard.core.Movement.Direction;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.Trend;
import org.junit.jupiter.api.Test;

class MovementTest {

  @Test
  void shouldFollowTheLastStep() {
    assertThat(moved(total(0, 2, 2), total(60, 3, 3)).direction()).isEqualTo(Direction.RISING);
    assertThat(moved(total(0, 3, 3), total(60, 1, 1)).direction()).isEqualTo(Direction.FALLING);
    assertThat(moved(total(0, 3, 3), total(60, 3, 3)).direction()).isEqualTo(Direction.STEADY);
    assertThat(moved(total(0, 3, 3), total(60, 1, 1)).delta()).isEqualByComparingTo("-2");
  }

  @Test
  void shouldNotTakeAMissingInputForRecovery() {
    var movement = moved(total(0, 5, 5), total(60, 3, 6));

    assertThat(movement.direction()).isEqualTo(Direction.UNKNOWN);
  }

  @Test
  void shouldSayRisingWhereEvenTheLeastIsMoreThanTheMostBefore() {
    assertThat(moved(total(0, 1, 3), total(60, 4, 7)).direction()).isEqualTo(Direction.RISING);
    assertThat(moved(total(0, 1, 4), total(60, 4, 7)).direction()).isEqualTo(Direction.UNKNOWN);
  }

  @Test
  void shouldKnowNothingWithOneSetOrNone() {
    assertThat(moved(total(0, 5, 5)).direction()).isEqualTo(Direction.UNKNOWN);
    assertThat(moved(total(0, 5, 5)).delta()).isNull();
    assertThat(Movement.of(null, List.of())).isEqualTo(Movement.UNKNOWN);
  }

  @Test
  void shouldLetASignificantTrendOfTheLeadingScoreDecide() {
    var recent = List.of(total(0, 4, 4), total(60, 4, 4));

    var significant = Movement.of(with(trend("news2", true)), recent);
    assertThat(significant.direction()).isEqualTo(Direction.RISING);
    assertThat(significant.trending()).isTrue();
    assertThat(Movement.of(with(trend("news2", false)), recent).direction())
        .isEqualTo(Direction.STEADY);
    assertThat(Movement.of(with(trend("heart-rate", true)), recent).direction())
        .isEqualTo(Direction.STEADY);
  }

  private static Movement moved(Total... recent) {
    return Movement.of(snapshot("V", "A", 1, 0, 1, 1), List.of(recent));
  }

  private static Total total(int minute, int low, int high) {
    return new Total(at(minute), BigDecimal.valueOf(low), BigDecimal.valueOf(high));
  }

  private static Trend trend(String code, boolean significant) {
    return new Trend(
        code, null, null, 0.5, 0.01, 10, 5, at(0), significant, null, null, null, null);
  }

  private static Snapshot with(Trend trend) {
    var plain = snapshot("V", "A", 1, 0, 4, 4);
    return new Snapshot(
        plain.encounter(),
        plain.asOf(),
        plain.assessment(),
        plain.sequence(),
        true,
        false,
        plain.policy(),
        0,
        plain.scores(),
        List.of(),
        List.of(trend),
        List.of(),
        plain.lastSet(),
        List.of(),
        plain.nextDue(),
        plain.interval(),
        plain.intervalReason(),
        plain.acceptedAt());
  }
}
