package org.driftward.alerts.core.outreach;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.core.outreach.Outcome.Failed;
import org.driftward.alerts.core.policy.Detail;
import org.driftward.alerts.core.policy.Outreach;
import org.junit.jupiter.api.Test;

/** Engineering choices, no source: exponential back-off with half of it by chance. */
class ProgressTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");
  private static final Instant DUE = NOW.plusSeconds(300);
  private static final Outreach POLICY =
      new Outreach(
          Detail.MINIMAL,
          4,
          Duration.ofSeconds(4),
          Duration.ofSeconds(10),
          Duration.ofSeconds(5),
          List.of());

  @Test
  void shouldDoubleThePauseUpToItsBound() {
    assertThat(List.of(1, 2, 3, 9))
        .extracting(made -> Progress.pause(made, POLICY, 1).toSeconds())
        .containsExactly(4L, 8L, 10L, 10L);
  }

  @Test
  void shouldLeaveHalfOfThePauseToChance() {
    assertThat(Progress.pause(1, POLICY, 0)).isEqualTo(Duration.ofSeconds(2));
    assertThat(Progress.pause(1, POLICY, 0.5)).isEqualTo(Duration.ofSeconds(3));
  }

  @Test
  void shouldTryAgainUntilTheAttemptsAreUsed() {
    var failed = new Failed("no connection", null);

    assertThat(after(failed, 3).state()).isEqualTo(State.FAILED);
    assertThat(after(failed, 4))
        .isEqualTo(new Progress(State.GIVEN_UP, null, "no connection, 4 attempts"));
  }

  @Test
  void shouldWaitAsLongAsTheReceiverAsks() {
    var progress = after(new Failed("answered 429", Duration.ofSeconds(90)), 1);

    assertThat(progress.next()).isEqualTo(NOW.plusSeconds(90));
  }

  @Test
  void shouldGiveUpWhatCannotArriveBeforeTheRungIsOver() {
    var justInTime = after(new Failed("answered 429", Duration.ofMillis(299_999)), 1);
    var tooLate = after(new Failed("answered 429", Duration.ofMinutes(5)), 1);

    assertThat(justInTime.state()).isEqualTo(State.FAILED);
    assertThat(tooLate.state()).isEqualTo(State.GIVEN_UP);
    assertThat(tooLate.why()).contains("no time left");
  }

  @Test
  void shouldNotRepeatWhatWasRefused() {
    assertThat(after(new Outcome.Refused("answered 404"), 1))
        .isEqualTo(new Progress(State.GIVEN_UP, null, "answered 404"));
  }

  private static Progress after(Outcome outcome, int made) {
    return Progress.after(outcome, made, DUE, NOW, POLICY, 0.5);
  }
}
