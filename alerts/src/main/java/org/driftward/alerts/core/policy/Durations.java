package org.driftward.alerts.core.policy;

import java.time.Duration;
import org.jspecify.annotations.Nullable;

/** Refuses times that cannot run. */
final class Durations {

  private Durations() {}

  /** Asked before anything else, because a file may leave a setting out. */
  static void positive(String field, @Nullable Duration duration) {
    if (duration == null) {
      throw new IllegalArgumentException(field + " is missing");
    }
    if (duration.isZero() || duration.isNegative()) {
      throw new IllegalArgumentException(field + ": " + duration + " is not positive");
    }
  }
}
