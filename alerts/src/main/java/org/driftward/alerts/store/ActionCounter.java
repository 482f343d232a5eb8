package org.driftward.alerts.store;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Singleton;
import java.util.EnumMap;
import java.util.Map;
import org.driftward.alerts.contract.EpisodeDesk.Action;

/** Counts what people do to episodes. Thread-safe. */
@Singleton
public class ActionCounter {

  private final Map<Action, Counter> counters = new EnumMap<>(Action.class);

  public ActionCounter(MeterRegistry registry) {
    for (var action : Action.values()) {
      counters.put(
          action,
          Counter.builder("driftward.episode.actions")
              .description("Actions of people on episodes that took effect")
              .tag("action", action.word())
              .register(registry));
    }
  }

  void count(Action action) {
    counters.get(action).increment();
  }
}
