package org.driftward.deploy.health;

import java.time.Duration;
import java.util.function.LongSupplier;
import org.jspecify.annotations.Nullable;

/** Whether something has been ill for a time without a break. Not thread-safe. */
final class Illness {

  private final Duration patience;
  private final LongSupplier nanoTime;
  private @Nullable Long since;

  /**
   * @param nanoTime wall-clock time in nanoseconds, as {@link System#nanoTime()}
   */
  Illness(Duration patience, LongSupplier nanoTime) {
    this.patience = patience;
    this.nanoTime = nanoTime;
  }

  /** Takes one more look, and says whether the illness has lasted as long as patience does. */
  boolean lasts(boolean ill) {
    if (!ill) {
      since = null;
      return false;
    }
    long now = nanoTime.getAsLong();
    if (since == null) {
      since = now;
    }
    return now - since >= patience.toNanos();
  }
}
