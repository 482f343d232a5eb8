package org.driftward.scoring.core.policy;

import java.time.Duration;

/** Guards shared by the records of a policy. Each names the setting and the offending value. */
final class Require {

  private Require() {}

  static void positive(String setting, Duration value) {
    if (value == null || value.isZero() || value.isNegative()) {
      throw new IllegalArgumentException(setting + " " + value + " is not a positive duration");
    }
  }

  static void positive(String setting, double value) {
    if (!(value > 0) || Double.isInfinite(value)) {
      throw new IllegalArgumentException(setting + " " + value + " is not a positive number");
    }
  }

  static void between(String setting, int value, int low, int high) {
    if (value < low || value > high) {
      throw new IllegalArgumentException(
          setting + " " + value + " is not between " + low + " and " + high);
    }
  }
}
