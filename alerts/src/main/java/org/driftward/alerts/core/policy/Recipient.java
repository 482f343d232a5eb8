package org.driftward.alerts.core.policy;

import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Contact;
import org.jspecify.annotations.Nullable;

/**
 * Somebody, or something, that can be told from outside the board.
 *
 * @param ward for which it stands, or null for every ward that has no line of its own
 * @param name as people know it; shown beside the state of each delivery
 * @param mail addresses
 * @param webhook names of configured webhooks, never their URLs or secrets; behind a space the
 *     number that the webhook is to page, where it pages more than one
 */
public record Recipient(
    @Nullable String ward,
    Audience audience,
    String name,
    List<String> mail,
    List<String> webhook) {

  public Recipient {
    Objects.requireNonNull(audience, "audience");
    if (name == null || name.isBlank()) {
      throw new IllegalArgumentException("a recipient without a name: " + audience.word());
    }
    mail = mail == null ? List.of() : List.copyOf(mail);
    webhook = webhook == null ? List.of() : List.copyOf(webhook);
    if (mail.isEmpty() && webhook.isEmpty()) {
      throw new IllegalArgumentException("recipient \"" + name + "\" has no address");
    }
    for (var address : mail) {
      if (!Contact.isMail(address)) {
        throw new IllegalArgumentException("recipient \"" + name + "\": no mail address");
      }
    }
  }

  /** Those that leave the house by the channel. */
  public List<String> addresses(Channel channel) {
    return channel == Channel.MAIL ? mail : webhook;
  }

  boolean standsFor(String otherWard) {
    return otherWard.equals(ward);
  }
}
