package org.driftward.alerts.core.audit;

import java.time.Instant;
import java.util.Objects;
import org.jspecify.annotations.Nullable;

/**
 * The response team was called to a patient.
 *
 * @param firstTrigger clinical time of the episode's first trigger
 * @param at when the team was told
 * @param record what the team wrote down about it, or null where it wrote nothing
 */
public record Call(
    String episode,
    String encounter,
    String ward,
    Instant firstTrigger,
    Instant at,
    @Nullable Report record) {

  /**
   * The team's own record, as far as measures need it.
   *
   * @param critical when the first critical intervention was made, or null
   * @param anyIntervention whether anything was done at all
   * @param stayed whether the patient stayed on the ward
   * @param plan whether a written plan was left
   * @param byFamily whether the patient or the family called
   * @param limitedBefore whether a limitation of treatment was in force before
   * @param limitedNow whether one was set at this call
   * @param arrived at the bedside, or null
   * @param ended or null
   */
  public record Report(
      @Nullable Instant critical,
      boolean anyIntervention,
      boolean stayed,
      boolean plan,
      boolean byFamily,
      boolean limitedBefore,
      boolean limitedNow,
      @Nullable Instant arrived,
      @Nullable Instant ended) {}

  public Call {
    Objects.requireNonNull(episode, "episode");
    Objects.requireNonNull(firstTrigger, "firstTrigger");
    Objects.requireNonNull(at, "at");
  }

  String trace() {
    return "episode/" + episode;
  }
}
