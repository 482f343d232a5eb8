package org.driftward.deploy.time;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class WardClockTest {

  private static final double RATE = 60;
  private static final Instant ORIGIN = Instant.parse("2026-01-05T03:00:00Z");
  private static final Duration STEP = Duration.ofSeconds(60);

  @TempDir Path folder;
  private ClockFile file;
  private long nanos = 42;

  @BeforeEach
  void open() {
    file = new ClockFile(folder.resolve("ward-clock"));
  }

  @Test
  void shouldBeginAtItsOrigin() {
    assertThat(clock().instant()).isEqualTo(ORIGIN);
  }

  @Test
  void shouldRunAtItsRate() {
    var clock = clock();

    wait(Duration.ofMillis(500));

    assertThat(clock.instant()).isEqualTo(ORIGIN.plusSeconds(30));
  }

  @Test
  void shouldRestWhileItIsStopped() {
    var clock = clock();
    wait(Duration.ofSeconds(10));
    clock.rest();

    wait(Duration.ofDays(3));

    assertThat(clock().instant()).isEqualTo(ORIGIN.plusSeconds(600));
  }

  @Test
  void shouldGoOnAfterACrashWithoutShowingATimeTwice() {
    var clock = clock();
    var last = ORIGIN;
    for (int i = 0; i < 25; i++) {
      wait(Duration.ofMillis(130));
      last = clock.instant();
    }

    var afterCrash = clock().instant();

    assertThat(afterCrash).isBetween(last, last.plus(STEP));
  }

  @Test
  void shouldNotGoBackWhenTheMachineDoes() {
    var clock = clock();
    wait(Duration.ofSeconds(2));
    var before = clock.instant();

    wait(Duration.ofSeconds(-1));

    assertThat(clock.instant()).isEqualTo(before);
  }

  @Test
  void shouldRefuseToStandStill() {
    assertThatIllegalArgumentException()
        .isThrownBy(() -> new WardClock(0, () -> nanos, file, ORIGIN))
        .withMessageContaining("0.0");
  }

  private WardClock clock() {
    return new WardClock(RATE, () -> nanos, file, ORIGIN);
  }

  private void wait(Duration wallClock) {
    nanos += wallClock.toNanos();
  }
}
