package org.driftward.alerts.core.outreach;

import java.util.List;
import java.util.stream.Stream;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Contact;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.policy.Audience;
import org.driftward.alerts.core.policy.Outreach;
import org.driftward.alerts.core.shift.Roster;
import org.jspecify.annotations.Nullable;

/**
 * Whoever is on duty and can be told by the channel; else the lines of the policy, so that a shift
 * without an address leaves nobody untold whom the policy reaches.
 */
public record Rostered(Roster roster, Outreach policy, Reach reach) implements Recipients {

  @Override
  public List<Addressee> of(Audience audience, Channel channel, String ward, @Nullable String bed) {
    var onDuty =
        roster
            .of(audience, ward, bed)
            .flatMap(shift -> onDuty(shift, channel))
            .filter(one -> reach.whyNot(channel, one.address()) == null)
            .toList();
    return onDuty.isEmpty() ? lines(audience, channel, ward) : onDuty;
  }

  private static Stream<Addressee> onDuty(Shift shift, Channel channel) {
    var contact = shift.contact();
    return contact == null
        ? Stream.empty()
        : Stream.ofNullable(address(contact, channel))
            .map(address -> new Addressee(shift.name(), address));
  }

  private static @Nullable String address(Contact contact, Channel channel) {
    if (channel == Channel.MAIL) {
      return contact.mail();
    }
    var webhook = contact.webhook();
    return webhook == null ? null : new PagerAddress(webhook, contact.number()).text();
  }

  private List<Addressee> lines(Audience audience, Channel channel, String ward) {
    return policy.recipients(audience, ward).stream()
        .flatMap(
            line ->
                line.addresses(channel).stream()
                    .map(address -> new Addressee(line.name(), address)))
        .toList();
  }
}
