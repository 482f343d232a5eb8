package org.driftward.alerts.core.policy;

import java.time.Duration;
import java.util.List;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.Channel;

/**
 * One step of the ladder.
 *
 * @param audience whom it calls, never empty
 * @param channels they are told by, never empty; the board always is one
 * @param acknowledge how long they have to answer before the next rung is told
 */
public record Rung(List<Audience> audience, List<Channel> channels, Duration acknowledge) {

  public Rung {
    audience = List.copyOf(audience);
    channels = List.copyOf(channels);
    if (audience.isEmpty()) {
      throw new IllegalArgumentException("a rung that tells nobody");
    }
    if (!channels.contains(Channel.BOARD)) {
      throw new IllegalArgumentException("a rung that the board does not show: " + channels);
    }
    Durations.positive("acknowledge", acknowledge);
  }

  public String words() {
    return audience.stream().map(Audience::words).collect(Collectors.joining(", "));
  }
}
