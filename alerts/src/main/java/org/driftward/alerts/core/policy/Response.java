package org.driftward.alerts.core.policy;

import java.time.Duration;
import java.util.List;

/**
 * What one level asks for.
 *
 * @param rungs from the first to be told to the last, never empty; the last repeats until answered
 * @param attend how long after the alarm somebody must be at the bedside
 * @param reassess how long after attendance the next complete set must be in
 * @param quiet how long after attendance the same picture alarms nobody again
 */
public record Response(List<Rung> rungs, Duration attend, Duration reassess, Duration quiet) {

  public Response {
    rungs = List.copyOf(rungs);
    if (rungs.isEmpty()) {
      throw new IllegalArgumentException("a ladder without a rung");
    }
    Durations.positive("attend", attend);
    Durations.positive("reassess", reassess);
    Durations.positive("quiet", quiet);
  }

  /** The rung at {@code index}, or the last one. */
  public Rung rung(int index) {
    return rungs.get(capped(index));
  }

  public boolean isLast(int index) {
    return capped(index) == rungs.size() - 1;
  }

  public int capped(int index) {
    return Math.min(index, rungs.size() - 1);
  }
}
