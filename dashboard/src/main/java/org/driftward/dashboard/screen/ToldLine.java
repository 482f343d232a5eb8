package org.driftward.dashboard.screen;

import java.time.Instant;
import java.time.ZoneId;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Delivery.State;

/**
 * How one alarm reached one recipient.
 *
 * @param whom and by what
 * @param state in words
 * @param missing whether nobody has been told by it
 * @param note more about it, or empty
 */
public record ToldLine(
    Instant at, String time, String whom, String state, boolean missing, String note) {

  public static ToldLine of(Delivery delivery, Instant now, ZoneId zone) {
    var state = delivery.state();
    return new ToldLine(
        delivery.at(),
        Wording.time(delivery.at(), now, zone),
        delivery.recipient() + ", " + delivery.channel().word(),
        words(delivery),
        state == State.GIVEN_UP || state == State.NOT_SENT || state == State.FAILED,
        delivery.why() == null ? "" : delivery.why());
  }

  private static String words(Delivery delivery) {
    return switch (delivery.state()) {
      case WAITING -> "waiting to be sent";
      case FAILED ->
          "not yet: " + Wording.count(delivery.attempts(), "attempt", "attempts") + " failed";
      case DELIVERED -> "delivered";
      case GIVEN_UP -> "not delivered, given up";
      case NOT_SENT -> "not sent";
      case WITHDRAWN -> "withdrawn";
    };
  }
}
