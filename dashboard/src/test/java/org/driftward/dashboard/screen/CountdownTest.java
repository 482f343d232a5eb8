package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Instant;
import org.junit.jupiter.api.Test;

class CountdownTest {

  private static final Instant AT = Instant.parse("2026-01-05T03:12:00Z");

  private final Countdown due = Countdown.due(AT, "due in", "overdue by");

  @Test
  void shouldCountDownToADeadline() {
    assertThat(due.words(AT.minusSeconds(720))).isEqualTo("due in 12 min");
  }

  @Test
  void shouldNotBeLateAtTheVeryMoment() {
    assertThat(due.late(AT)).isFalse();
    assertThat(due.words(AT)).isEqualTo("due in under 1 min");
  }

  @Test
  void shouldBeLateOneMillisecondLater() {
    assertThat(due.late(AT.plusMillis(1))).isTrue();
    assertThat(due.words(AT.plusSeconds(300))).isEqualTo("overdue by 5 min");
  }

  @Test
  void shouldCountUpWithoutEverBeingLate() {
    var since = Countdown.since(AT, "unanswered for");
    assertThat(since.words(AT.plusSeconds(240))).isEqualTo("unanswered for 4 min");
    assertThat(since.late(AT.plusSeconds(240))).isFalse();
  }
}
