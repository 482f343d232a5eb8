package org.driftward.deploy.health;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.junit.jupiter.api.Test;

class IllnessTest {

  private static final Duration PATIENCE = Duration.ofMinutes(2);

  private long nanos = 7;
  private final Illness illness = new Illness(PATIENCE, () -> nanos);

  @Test
  void shouldLastFromTheEndOfPatienceOn() {
    assertThat(illness.lasts(true)).isFalse();

    nanos += PATIENCE.toNanos() - 1;
    assertThat(illness.lasts(true)).isFalse();

    nanos += 1;
    assertThat(illness.lasts(true)).isTrue();
  }

  @Test
  void shouldBeginAnewAfterABreak() {
    illness.lasts(true);
    nanos += PATIENCE.toNanos() / 2;
    illness.lasts(false);

    illness.lasts(true);
    nanos += PATIENCE.toNanos() - 1;

    assertThat(illness.lasts(true)).isFalse();
  }
}
