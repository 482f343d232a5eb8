package org.driftward.alerts.deadline;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.Gauge;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.EnumMap;
import java.util.Map;
import java.util.concurrent.atomic.AtomicLong;
import org.driftward.alerts.config.AlertsConfig;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.store.DueCourses;
import org.driftward.alerts.store.EpisodeCount;
import org.driftward.alerts.store.FailedDeliveries;
import org.driftward.alerts.store.PolicyRecord;
import org.driftward.ground.part.RepeatingPart;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;

/**
 * Looks again and again whether a clock has run out. Every instance looks; the database lets one of
 * them have each clock, so another takes over as soon as one dies.
 */
@Singleton
public class LadderClock extends RepeatingPart implements RolePart {

  private static final Duration BETWEEN_COUNTS = Duration.ofSeconds(5);

  private final DueCourses due;
  private final FailedDeliveries failed;
  private final PolicyRecord policy;
  private final EpisodeCount count;
  private final AlertsConfig config;
  private final Counter fired;
  private final Map<EpisodeState, AtomicLong> running = new EnumMap<>(EpisodeState.class);
  private boolean policyKept;
  private long countedAt;

  public LadderClock(
      DueCourses due,
      FailedDeliveries failed,
      PolicyRecord policy,
      EpisodeCount count,
      AlertsConfig config,
      MeterRegistry registry) {
    super("ladder-clock", config.longestBackOff());
    this.due = due;
    this.failed = failed;
    this.policy = policy;
    this.count = count;
    this.config = config;
    this.fired =
        Counter.builder("driftward.ladder.fired")
            .description("Clocks that ran out and took effect")
            .register(registry);
    for (var state : EpisodeState.values()) {
      if (state != EpisodeState.CLOSED) {
        var value = new AtomicLong();
        running.put(state, value);
        Gauge.builder("driftward.episodes", value, AtomicLong::get)
            .description("Running episodes by state, over the whole hospital")
            .tag("state", state.word())
            .register(registry);
      }
    }
  }

  @Override
  public Role role() {
    return Role.ALERTS;
  }

  @Override
  public Duration run() {
    if (!policyKept) {
      policy.keep();
      policyKept = true;
    }
    int effects = due.fire(config.deadlines());
    fired.increment(effects);
    failed.climb(config.deadlines());
    count();
    return effects < config.deadlines() ? config.look() : Duration.ZERO;
  }

  private void count() {
    if (countedAt == 0 || System.nanoTime() - countedAt > BETWEEN_COUNTS.toNanos()) {
      count.byState().forEach((state, number) -> running.get(state).set(number));
      countedAt = System.nanoTime();
    }
  }
}
