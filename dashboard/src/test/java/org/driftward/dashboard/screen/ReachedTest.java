package org.driftward.dashboard.screen;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ingest.contract.Level;
import org.junit.jupiter.api.Test;

/** What a page may claim of an alarm. */
class ReachedTest {

  private final Episode open = Sample.open("V-9", Level.HIGH, 4, "a reason");
  private final Episode answered =
      Sample.episode(
          "V-9", Level.HIGH, EpisodeState.ATTENDED, "Rui", Awaiting.REASSESSMENT, 5, 4, "a reason");

  @Test
  void shouldNameWhomADeliveryReachedAndWhen() {
    var present =
        List.of(
            delivery("Team pager", Channel.WEBHOOK, State.DELIVERED, false),
            delivery("page of Rui", Channel.TONE, State.DELIVERED, false),
            delivery("Charge phone", Channel.MAIL, State.GIVEN_UP, false));

    assertThat(of(open, present).words())
        .isEqualTo("told: Team pager by webhook 03:09; sounded at the page of Rui 03:09");
  }

  @Test
  void shouldCallOnTheWayWhatHasNotArrived() {
    var present = List.of(delivery("Team pager", Channel.WEBHOOK, State.FAILED, true));

    assertThat(of(open, present))
        .isEqualTo(new Reached("to be told next: Team pager by webhook", false));
  }

  @Test
  void shouldAskForTheTelephoneWhereNobodyWillBeReached() {
    var hopeless = List.of(delivery("doctor on call", Channel.MAIL, State.NOT_SENT, false));

    assertThat(List.of(of(open, List.of()), of(open, hopeless)))
        .containsOnly(new Reached("shown here only: telephone charge nurse, response team", true));
  }

  @Test
  void shouldAskForNoTelephoneOnceSomebodyHasAnswered() {
    assertThat(of(answered, List.of())).isEqualTo(new Reached("", false));
  }

  private static Reached of(Episode episode, List<Delivery> present) {
    return Reached.of(episode, present, Sample.NOW, Sample.ZONE);
  }

  private static Delivery delivery(String recipient, Channel channel, State state, boolean again) {
    var at = Sample.NOW.minusSeconds(180);
    return new Delivery(7, 0, channel, recipient, state, 1, at, null, again ? Sample.NOW : null);
  }
}
