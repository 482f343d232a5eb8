package org.driftward.dashboard.stream;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import io.micrometer.core.instrument.Timer;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.atomic.AtomicInteger;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * What the dashboard measures about itself. Latencies are in ward time, which runs faster than the
 * wall clock in the demo.
 */
@ApplicationScoped
public class BoardMetrics {

  private final Clock clock;
  private final Timer fromTaken;
  private final Timer fromAccepted;
  private final Counter unreadable;
  private final AtomicInteger clients = new AtomicInteger();
  private final ConcurrentHashMap<String, Long> lags = new ConcurrentHashMap<>();

  public BoardMetrics(MeterRegistry registry, Clock clock) {
    this.clock = clock;
    this.fromTaken = latency(registry, "taken");
    this.fromAccepted = latency(registry, "accepted");
    this.unreadable =
        Counter.builder("driftward.board.unreadable")
            .description("Records of the topics that were not what their topic promises")
            .register(registry);
    Gauge.builder("driftward.board.lag", lags, all -> all.values().stream().mapToLong(l -> l).sum())
        .description("Records of the topics that this process has still to read")
        .register(registry);
    Gauge.builder("driftward.stream.clients", clients, AtomicInteger::get)
        .description("Live streams that are open now")
        .register(registry);
  }

  private static Timer latency(MeterRegistry registry, String from) {
    return Timer.builder("driftward.board.latency")
        .description("Time until the newest picture of a patient is on the board")
        .tag("from", from)
        .publishPercentileHistogram()
        .minimumExpectedValue(Duration.ofMillis(5))
        .maximumExpectedValue(Duration.ofMinutes(10))
        .register(registry);
  }

  /** The snapshot is committed: whoever reads the board now sees it. */
  void visible(Snapshot snapshot) {
    if (snapshot.latest()) {
      var now = clock.instant();
      record(fromTaken, snapshot.asOf(), now);
      record(fromAccepted, snapshot.acceptedAt(), now);
    }
  }

  private static void record(Timer timer, @Nullable Instant from, Instant now) {
    if (from != null && !from.isAfter(now)) {
      timer.record(Duration.between(from, now));
    }
  }

  void unreadable() {
    unreadable.increment();
  }

  /**
   * @param reader whose lag it is
   */
  void lag(String reader, long records) {
    lags.put(reader, records);
  }

  void gone(String reader) {
    lags.remove(reader);
  }

  public void clientCame() {
    clients.incrementAndGet();
  }

  public void clientLeft() {
    clients.decrementAndGet();
  }
}
