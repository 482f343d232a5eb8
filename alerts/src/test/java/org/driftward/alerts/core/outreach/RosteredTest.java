package org.driftward.alerts.core.outreach;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Contact;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.policy.Audience;
import org.driftward.alerts.core.policy.Detail;
import org.driftward.alerts.core.policy.Outreach;
import org.driftward.alerts.core.policy.Recipient;
import org.driftward.alerts.core.shift.Roster;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Whom an alarm reaches when people on duty have said how, and when they have not. */
class RosteredTest {

  private static final Instant NOW = Instant.parse("2026-01-05T03:00:00Z");
  private static final Reach BOTH = new Reach(true, Set.of("pagers"));
  private static final Outreach POLICY =
      new Outreach(
          Detail.MINIMAL,
          1,
          Duration.ofSeconds(1),
          Duration.ofSeconds(1),
          Duration.ofSeconds(1),
          List.of(
              line(Audience.CHARGE_NURSE, "Charge phone"),
              line(Audience.BEDSIDE_NURSE, "Ward phone")));

  @Test
  void shouldTellTheChargeNurseOnDuty() {
    var ada = shift("Ada", Duty.CHARGE, new Contact("ada@ward.example", "pagers", "4711"));

    assertThat(charge(Channel.MAIL, ada)).containsExactly(new Addressee("Ada", "ada@ward.example"));
    assertThat(charge(Channel.WEBHOOK, ada)).containsExactly(new Addressee("Ada", "pagers 4711"));
  }

  @Test
  void shouldTellWhoeverLooksAfterTheBedAndNobodyElse() {
    var own = shift("Bo", Duty.BEDSIDE, new Contact("bo@ward.example", null, null), "A1");
    var other = shift("Cy", Duty.BEDSIDE, new Contact("cy@ward.example", null, null), "A2");
    var recipients = new Rostered(Roster.of(List.of(own, other)), POLICY, BOTH);

    assertThat(recipients.of(Audience.BEDSIDE_NURSE, Channel.MAIL, "heron", "A1"))
        .containsExactly(new Addressee("Bo", "bo@ward.example"));
    assertThat(recipients.of(Audience.BEDSIDE_NURSE, Channel.MAIL, "heron", "A3"))
        .extracting(Addressee::name)
        .containsExactly("Ward phone");
  }

  @Test
  void shouldFallBackToThePolicyForAChannelWithoutAnAddress() {
    var pagerOnly = shift("Ada", Duty.CHARGE, new Contact(null, "pagers", "4711"));

    assertThat(charge(Channel.MAIL, pagerOnly))
        .containsExactly(new Addressee("Charge phone", "charge@ward.example"));
    assertThat(charge(Channel.MAIL, shift("Bo", Duty.CHARGE, null)))
        .containsExactly(new Addressee("Charge phone", "charge@ward.example"));
    assertThat(charge(Channel.MAIL)).hasSize(1);
  }

  @Test
  void shouldFallBackToThePolicyWhereTheWebhookIsConfiguredNoMore() {
    var ada = shift("Ada", Duty.CHARGE, new Contact(null, "old-pagers", "4711"));

    assertThat(charge(Channel.WEBHOOK, ada))
        .containsExactly(new Addressee("Charge phone", "pagers"));
  }

  @Test
  void shouldForgetWhoeverHasGoneOffDuty() {
    var ada = shift("Ada", Duty.CHARGE, new Contact("ada@ward.example", null, null));

    assertThat(charge(Channel.MAIL, ada.endedAt(NOW, null)))
        .extracting(Addressee::name)
        .containsExactly("Charge phone");
  }

  @Test
  void shouldRefuseAContactThatReachesNobody() {
    assertThatThrownBy(() -> new Contact(null, null, null))
        .hasMessage("a contact without mail and without webhook");
    assertThatThrownBy(() -> new Contact("nowhere", null, null)).hasMessage("no mail address");
    assertThatThrownBy(() -> new Contact("a@b.example", null, "4711"))
        .hasMessage("a number is one word, for a webhook");
    assertThatThrownBy(() -> new Contact(null, "pagers", "47 11"))
        .hasMessage("a number is one word, for a webhook");
    assertThat(new Contact("a@b.example", null, null).toString()).doesNotContain("@");
  }

  private static List<Addressee> charge(Channel channel, Shift... shifts) {
    var recipients = new Rostered(Roster.of(List.of(shifts)), POLICY, BOTH);
    return recipients.of(Audience.CHARGE_NURSE, channel, "heron", "A1");
  }

  private static Shift shift(String name, Duty duty, @Nullable Contact contact, String... beds) {
    return new Shift(
        "S-" + name,
        "heron",
        duty,
        name,
        name,
        Set.of(beds),
        NOW,
        NOW.plusSeconds(3600),
        null,
        null,
        contact);
  }

  private static Recipient line(Audience audience, String name) {
    return new Recipient(null, audience, name, List.of("charge@ward.example"), List.of("pagers"));
  }
}
