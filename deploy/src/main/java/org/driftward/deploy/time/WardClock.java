package org.driftward.deploy.time;

import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.function.LongSupplier;

/**
 * A clock that runs at a rate, rests while the process is stopped, and never goes back.
 *
 * <p>It promises before it shows: the time up to which it may show times is recorded first, in
 * steps of a second of wall-clock time. After a crash it goes on from the last promise, so at most
 * one step of ward time is skipped and none is seen twice. Thread-safe.
 */
public final class WardClock extends Clock {

  private static final Duration STEP = Duration.ofSeconds(1);

  private final double rate;
  private final LongSupplier nanoTime;
  private final ClockRecord record;
  private final Instant begin;
  private final long beginNanos;

  private Instant shown;
  private Instant promised;

  /**
   * @param rate seconds of ward time in one second of wall-clock time
   * @param nanoTime wall-clock time in nanoseconds, as {@link System#nanoTime()}
   * @param record where the promise outlives this process
   * @param origin where the clock begins if there is no record
   */
  public WardClock(double rate, LongSupplier nanoTime, ClockRecord record, Instant origin) {
    if (!(rate > 0)) {
      throw new IllegalArgumentException("clock rate " + rate + " is not above 0");
    }
    this.rate = rate;
    this.nanoTime = nanoTime;
    this.record = record;
    this.begin = record.read().orElse(origin);
    this.beginNanos = nanoTime.getAsLong();
    this.shown = begin;
    this.promised = begin;
  }

  @Override
  public synchronized Instant instant() {
    long elapsed = nanoTime.getAsLong() - beginNanos;
    var now = begin.plusNanos((long) (elapsed * rate));
    if (now.isAfter(shown)) {
      if (now.isAfter(promised)) {
        promised = now.plusNanos((long) (STEP.toNanos() * rate));
        record.write(promised);
      }
      shown = now;
    }
    return shown;
  }

  /** Records the time last shown, so that a clean stop skips nothing. */
  public synchronized void rest() {
    record.write(instant());
  }

  @Override
  public ZoneId getZone() {
    return ZoneOffset.UTC;
  }

  @Override
  public Clock withZone(ZoneId zone) {
    throw new UnsupportedOperationException("ward time is kept in UTC");
  }
}
