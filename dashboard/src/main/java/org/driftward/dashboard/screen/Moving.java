package org.driftward.dashboard.screen;

import org.driftward.dashboard.core.Movement;
import org.driftward.dashboard.core.Movement.Direction;

/** Which way a patient is going: a drawn arrow and words. */
public record Moving(Direction arrow, String words) {

  public static Moving of(Movement movement) {
    return switch (movement.direction()) {
      case RISING ->
          new Moving(Direction.RISING, (movement.slides() ? "sliding" : "up") + step(movement, 1));
      case FALLING -> new Moving(Direction.FALLING, "improving" + step(movement, -1));
      case STEADY -> new Moving(Direction.STEADY, "steady");
      case UNKNOWN -> new Moving(Direction.UNKNOWN, "no trend yet");
    };
  }

  /** The last step in points, unless it went the other way than the movement as a whole. */
  private static String step(Movement movement, int sign) {
    var delta = movement.delta();
    return delta == null || delta.signum() != sign
        ? ""
        : " " + Wording.signed(delta.doubleValue(), 1);
  }
}
