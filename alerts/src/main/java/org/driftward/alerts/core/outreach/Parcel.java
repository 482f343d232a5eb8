package org.driftward.alerts.core.outreach;

import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.EpisodeChange;

/**
 * What a courier carries. The same parcel is made again for every attempt.
 *
 * @param key idempotency key
 * @param recipient as people know it
 * @param address of mail, or a {@link PagerAddress} as text
 * @param alarm the journal entry that it tells of
 * @param story every change of the episode up to the alarm, oldest first
 */
public record Parcel(
    String key,
    Channel channel,
    String recipient,
    String address,
    EpisodeChange alarm,
    List<EpisodeChange> story) {

  public Parcel {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(alarm, "alarm");
    story = List.copyOf(story);
  }

  /** Neither an address nor a patient. */
  @Override
  public String toString() {
    return "Parcel[" + key + "]";
  }
}
