package org.driftward.alerts.core.outreach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.tuple;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.policy.Audience;
import org.driftward.alerts.core.policy.Detail;
import org.driftward.alerts.core.policy.Outreach;
import org.driftward.alerts.core.policy.Recipient;
import org.driftward.alerts.core.policy.Rung;
import org.driftward.alerts.core.shift.Roster;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

class DispatchesTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");
  private static final Reach BOTH = new Reach(true, Set.of("pagers"));

  @Test
  void shouldTellWhoeverStandsInTwoAudiencesOnce() {
    var dispatches =
        dispatches(
            BOTH,
            mail(null, Audience.CHARGE_NURSE, "same@ward.example"),
            mail(null, Audience.ON_CALL, "same@ward.example"));

    assertThat(dispatches.of(notice(Channel.MAIL)))
        .extracting(Dispatch::address, Dispatch::audiences, Dispatch::whyNot)
        .containsExactly(
            tuple("same@ward.example", Set.of(Audience.CHARGE_NURSE, Audience.ON_CALL), null));
  }

  @Test
  void shouldPreferTheWardsOwnLines() {
    var dispatches =
        dispatches(
            BOTH,
            mail(null, Audience.CHARGE_NURSE, "every@ward.example"),
            mail("heron", Audience.CHARGE_NURSE, "heron@ward.example"),
            mail("alder", Audience.CHARGE_NURSE, "alder@ward.example"),
            mail(null, Audience.ON_CALL, "doctor@ward.example"));

    assertThat(dispatches.of(notice(Channel.MAIL)))
        .extracting(Dispatch::address)
        .containsExactly("heron@ward.example", "doctor@ward.example");
  }

  @Test
  void shouldSayWhereNobodyHasAnAddress() {
    var dispatches = dispatches(BOTH, mail(null, Audience.CHARGE_NURSE, "a@ward.example"));

    assertThat(dispatches.of(notice(Channel.MAIL)))
        .extracting(Dispatch::recipient, Dispatch::whyNot)
        .contains(tuple("doctor on call", "nobody has an address for mail"));
  }

  @Test
  void shouldSayThatAChannelIsOff() {
    var off = new Reach(false, Set.of());
    var dispatches = dispatches(off, mail(null, Audience.CHARGE_NURSE, "a@ward.example"));

    assertThat(dispatches.of(notice(Channel.MAIL)))
        .extracting(Dispatch::whyNot)
        .contains("mail is not configured");
  }

  @Test
  void shouldLeaveTheBoardAndItsToneToThePages() {
    assertThat(dispatches(BOTH).of(notice(Channel.TONE))).isEmpty();
  }

  @Test
  void shouldKeepTheKeyOfAnAlarmAndAnAddress() {
    var one = new Dispatch(Channel.MAIL, "A", "a@x.example", Set.of(Audience.ON_CALL), null);
    var renamed = new Dispatch(Channel.MAIL, "B", "a@x.example", Set.of(), null);

    assertThat(one.key(7)).isEqualTo(renamed.key(7)).isNotEqualTo(one.key(8));
  }

  private static Dispatches dispatches(Reach reach, Recipient... lines) {
    var outreach =
        new Outreach(
            Detail.MINIMAL,
            1,
            Duration.ofSeconds(1),
            Duration.ofSeconds(1),
            Duration.ofSeconds(1),
            List.of(lines));
    return new Dispatches(new Rostered(Roster.of(List.of()), outreach, reach), reach);
  }

  private static Recipient mail(@Nullable String ward, Audience audience, String address) {
    return new Recipient(ward, audience, audience.words(), List.of(address), List.of());
  }

  private static Notice notice(Channel channel) {
    var rung =
        new Rung(
            List.of(Audience.CHARGE_NURSE, Audience.ON_CALL),
            List.of(Channel.BOARD, channel),
            Duration.ofMinutes(5));
    var episode =
        new Episode(
            "E-V-1-1",
            1,
            "V-1",
            "heron",
            "A2",
            EpisodeState.OPEN,
            Level.HIGH,
            null,
            null,
            NOW,
            NOW.plusSeconds(300),
            Awaiting.ACKNOWLEDGEMENT,
            0,
            rung.words(),
            List.of(),
            null,
            null,
            null,
            null);
    return new Notice(1, episode, rung, NOW);
  }
}
