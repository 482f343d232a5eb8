package org.driftward.alerts;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;

/** A clock that a test sets. Thread-safe. */
public final class TestClock extends Clock {

  private volatile Instant now;

  public TestClock(Instant now) {
    this.now = now;
  }

  public void set(Instant time) {
    now = time;
  }

  public Instant forward(Duration step) {
    now = now.plus(step);
    return now;
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    return this;
  }

  @Override
  public Instant instant() {
    return now;
  }
}
