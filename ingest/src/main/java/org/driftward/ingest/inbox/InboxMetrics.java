package org.driftward.ingest.inbox;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import jakarta.inject.Singleton;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.concurrent.atomic.AtomicLong;

/** How far the inbox is read and how fast. Thread-safe. */
@Singleton
public class InboxMetrics {

  private final AtomicLong lag = new AtomicLong();
  private final AtomicBoolean paused = new AtomicBoolean();
  private final Counter read;
  private final Counter lost;
  private final Timer transaction;

  public InboxMetrics(MeterRegistry registry) {
    Gauge.builder("driftward.inbox.lag", lag, AtomicLong::get)
        .description("Records of the inbox's partitions in this process that are not dealt with")
        .register(registry);
    Gauge.builder("driftward.inbox.paused", paused, on -> on.get() ? 1 : 0)
        .description("Whether reading is paused until what it needs answers again")
        .register(registry);
    this.read =
        Counter.builder("driftward.inbox.read")
            .description("Records of the inbox that were dealt with, kept or refused")
            .register(registry);
    this.lost =
        Counter.builder("driftward.inbox.lost")
            .description("Records that the broker forgot before they were read")
            .register(registry);
    this.transaction =
        Timer.builder("driftward.inbox.transaction")
            .description("Time to judge a batch of the inbox and to commit what follows")
            .publishPercentileHistogram()
            .register(registry);
  }

  void lag(long records) {
    lag.set(records);
  }

  void paused(boolean is) {
    paused.set(is);
  }

  void read(int records) {
    read.increment(records);
  }

  void lost(long records) {
    lost.increment((double) records);
  }

  Timer transaction() {
    return transaction;
  }
}
