package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ingest.contract.Level;
import org.junit.jupiter.api.Test;

class OutcomeTest {

  private final Episode taken =
      Sample.episode(
          "V-1",
          Level.HIGH,
          EpisodeState.ACKNOWLEDGED,
          "Rui Okafor",
          Awaiting.ATTENDANCE,
          30,
          4,
          "a reason");

  @Test
  void shouldSayWhatIsExpectedNextAndByWhen() {
    assertThat(Outcome.done(Action.ACKNOWLEDGE, taken, Sample.NOW, Sample.ZONE))
        .isEqualTo(
            new Outcome(true, "You own this now. Somebody is expected at the bedside by 03:42."));
  }

  @Test
  void shouldSayWhenAHoldEnds() {
    assertThat(Outcome.done(Action.HOLD, taken, Sample.NOW, Sample.ZONE).words())
        .isEqualTo("On hold until 03:42. Then the clock runs again.");
  }

  @Test
  void shouldSayWhoWasFaster() {
    var outcome = Outcome.tooLate(taken, "Rui Okafor has answered already");
    assertThat(outcome.done()).isFalse();
    assertThat(outcome.words())
        .startsWith("Nothing was changed: Rui Okafor has answered already.")
        .endsWith("Responsible now: Rui Okafor.");
  }
}
