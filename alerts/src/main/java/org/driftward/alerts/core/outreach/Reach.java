package org.driftward.alerts.core.outreach;

import java.util.Set;
import org.driftward.alerts.contract.Channel;
import org.jspecify.annotations.Nullable;

/**
 * The ways out of the house that are configured.
 *
 * @param webhooks names of those with a URL and a secret
 */
public record Reach(boolean mail, Set<String> webhooks) {
  public Reach {
    webhooks = Set.copyOf(webhooks);
  }

  public boolean runs(Channel channel) {
    return switch (channel) {
      case BOARD, TONE -> true;
      case MAIL -> mail;
      case WEBHOOK -> !webhooks.isEmpty();
    };
  }

  /** Why this address cannot be reached whatever is tried, or null if it can. */
  @Nullable String whyNot(Channel channel, String address) {
    if (!runs(channel)) {
      return channel.word() + " is not configured";
    }
    boolean unknown =
        channel == Channel.WEBHOOK && !webhooks.contains(PagerAddress.of(address).webhook());
    return unknown ? "no webhook of this name is configured" : null;
  }
}
