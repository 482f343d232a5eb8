package org.driftward.dashboard.account;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import org.driftward.dashboard.account.Patience.Failures;
import org.junit.jupiter.api.Test;

class PatienceTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");
  private static final Patience PATIENCE =
      new Patience(3, Duration.ofSeconds(10), Duration.ofSeconds(60), Duration.ofHours(1));

  @Test
  void shouldDoubleTheWaitFromTheLastFreeFailureUpToTheLongest() {
    var waits = new ArrayList<Long>();
    var failures = Failures.NONE;
    for (int i = 0; i < 7; i++) {
      failures = PATIENCE.failed(failures, NOW);
      waits.add(Duration.between(NOW, failures.lockedUntil()).toSeconds());
    }

    assertThat(waits).isEqualTo(List.of(0L, 0L, 10L, 20L, 40L, 60L, 60L));
  }

  @Test
  void shouldLockUntilTheEndAndNotAtIt() {
    var failures = new Failures(3, NOW, NOW.plusSeconds(10));

    assertThat(failures.locked(NOW.plusSeconds(10).minusMillis(1))).isTrue();
    assertThat(failures.locked(NOW.plusSeconds(10))).isFalse();
  }

  @Test
  void shouldForgetAfterAWhile() {
    var before = new Failures(9, NOW, NOW);

    assertThat(PATIENCE.failed(before, NOW.plus(Duration.ofHours(1)).minusMillis(1)).failures())
        .isEqualTo(10);
    assertThat(PATIENCE.failed(before, NOW.plus(Duration.ofHours(1))).failures()).isEqualTo(1);
  }
}
