package org.driftward.dashboard.screen;

import org.driftward.dashboard.core.Movement;
import org.driftward.dashboard.core.Movement.Direction;

/** Which way a patient is going: a drawn arrow and words. */
public record Moving(Direction arrow, String words) {

  public static Moving of(Movement movement) {
    return switch (movement.direction()) {
      case RISING ->
          new Moving(
              Direction.RISING,
              movement.slides() ? "sliding" + step(movement) : "up" + step(movement));
      case FALLING -> new Moving(Direction.FALLING, "improving" + step(movement));
      case STEADY -> new Moving(Direction.STEADY, "steady");
      case UNKNOWN -> new Moving(Direction.UNKNOWN, "no trend yet");
    };
  }

  /** The last step in points. */
  private static String step(Movement movement) {
    var delta = movement.delta();
    return delta == null || delta.signum() == 0 ? "" : " " + Wording.signed(delta.doubleValue(), 1);
  }
}
