package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.concurrent.Semaphore;
import java.util.concurrent.TimeUnit;

/** Wakes whoever sends what this process has just written. Thread-safe. */
@Singleton
public class Bell {

  private final Semaphore rung = new Semaphore(0);

  public void ring() {
    rung.release();
  }

  /** Returns when the bell has rung since the last call, or after {@code longest}. */
  public void await(Duration longest) throws InterruptedException {
    if (rung.tryAcquire(longest.toMillis(), TimeUnit.MILLISECONDS)) {
      rung.drainPermits();
    }
  }
}
