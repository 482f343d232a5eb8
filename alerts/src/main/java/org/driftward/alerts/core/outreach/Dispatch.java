package org.driftward.alerts.core.outreach;

import java.nio.charset.StandardCharsets;
import java.util.EnumSet;
import java.util.Objects;
import java.util.Set;
import java.util.UUID;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.core.policy.Audience;
import org.jspecify.annotations.Nullable;

/**
 * One alarm for one address.
 *
 * @param recipient as people know it
 * @param address of mail, or a {@link PagerAddress} as text; empty where nobody has one
 * @param audiences in whose place it is told
 * @param whyNot it cannot be sent at all, in words, or null
 */
public record Dispatch(
    Channel channel,
    String recipient,
    String address,
    Set<Audience> audiences,
    @Nullable String whyNot) {

  public Dispatch {
    Objects.requireNonNull(channel, "channel");
    Objects.requireNonNull(recipient, "recipient");
    Objects.requireNonNull(address, "address");
    audiences = Set.copyOf(audiences);
  }

  /**
   * The same for the same alarm, channel and address, however often it is asked or sent: a receiver
   * knows a repetition by it.
   */
  public String key(long notice) {
    var whom = address.isEmpty() ? recipient : address;
    var name = notice + " " + channel.word() + " " + whom;
    return UUID.nameUUIDFromBytes(name.getBytes(StandardCharsets.UTF_8)).toString();
  }

  Dispatch alsoFor(Dispatch other) {
    var both = EnumSet.copyOf(audiences);
    both.addAll(other.audiences);
    return new Dispatch(channel, recipient, address, both, whyNot);
  }
}
