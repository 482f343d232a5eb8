package org.driftward.ingest.inbox;

import java.time.Duration;
import java.util.function.LongSupplier;

/** Pauses that double up to a bound while nothing answers. Used by one thread. */
final class Breather {

  private static final Duration FIRST = Duration.ofMillis(200);
  private static final Duration LONGEST = Duration.ofSeconds(5);

  private final LongSupplier nanos;
  private Duration next = FIRST;
  private long until;
  private boolean pausing;

  /**
   * @param nanos a clock that only goes forward
   */
  Breather(LongSupplier nanos) {
    this.nanos = nanos;
  }

  void pause() {
    pausing = true;
    until = nanos.getAsLong() + next.toNanos();
    var doubled = next.multipliedBy(2);
    next = doubled.compareTo(LONGEST) < 0 ? doubled : LONGEST;
  }

  /** It answers again. */
  void recovered() {
    pausing = false;
    next = FIRST;
  }

  boolean pausing() {
    return pausing;
  }

  /** Whether a pause is over, and the work should be tried again. */
  boolean due() {
    return pausing && nanos.getAsLong() - until >= 0;
  }
}
