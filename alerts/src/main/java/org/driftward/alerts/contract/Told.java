package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Delivery.State;

/**
 * Somebody whom an alarm reached. Only what was delivered is listed, and delivery is not an answer.
 *
 * @param person as the hospital's policy or the shift names them; for a tone, whose page sounded
 * @param at when it was delivered, wall clock
 * @param delivered always true; what is on its way or has failed is a {@link Delivery}
 */
public record Told(String person, Channel channel, Instant at, boolean delivered) {

  public Told {
    Objects.requireNonNull(person, "person");
    Objects.requireNonNull(channel, "channel");
    Objects.requireNonNull(at, "at");
    if (!delivered) {
      throw new IllegalArgumentException("told without delivery");
    }
  }

  /** Those of the deliveries that arrived, in their order. */
  public static List<Told> among(List<Delivery> deliveries) {
    return deliveries.stream()
        .filter(one -> one.state() == State.DELIVERED)
        .map(one -> new Told(one.recipient(), one.channel(), one.at(), true))
        .toList();
  }
}
