package org.driftward.alerts.core.policy;

import java.time.Duration;

/** Refuses times that cannot run. */
final class Durations {

  private Durations() {}

  static void positive(String field, Duration duration) {
    if (duration.isZero() || duration.isNegative()) {
      throw new IllegalArgumentException(field + ": " + duration + " is not positive");
    }
  }
}
