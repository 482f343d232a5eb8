package org.driftward.scoring.stream;

import java.time.Duration;
import java.util.concurrent.atomic.AtomicLong;

/**
 * Remembers the last failure for a while, by the monotonic clock: this is about the machine, not
 * about the ward. Thread-safe.
 */
final class Failures {

  private static final long MEMORY = Duration.ofSeconds(30).toNanos();
  private static final long NEVER = Long.MIN_VALUE;

  private final AtomicLong last = new AtomicLong(NEVER);

  void another() {
    last.set(System.nanoTime());
  }

  boolean recent() {
    long at = last.get();
    return at != NEVER && System.nanoTime() - at < MEMORY;
  }
}
