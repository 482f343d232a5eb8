package org.driftward.alerts.core.policy;

import java.time.Duration;

/**
 * When a level falls: after this many sets running below it, the first of them at least this long
 * ago. An incomplete set counts only if its worst possible score is below as well.
 */
public record Recovery(int sets, Duration lasting) {

  public Recovery {
    if (sets < 1) {
      throw new IllegalArgumentException("recovery after " + sets + " sets");
    }
    if (lasting.isNegative()) {
      throw new IllegalArgumentException("recovery lasting " + lasting);
    }
  }
}
