package org.driftward.alerts.contract;

import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.jspecify.annotations.Nullable;

/**
 * Where arrests, moves to intensive care, deaths and interventions are recorded. Thread-safe,
 * blocking.
 */
public interface EventDesk {

  /**
   * Durable when it returns.
   *
   * @param at when it happened, not in the future; null for now
   * @param expected whether a death was expected, or a move planned
   * @throws IllegalArgumentException in words, if the time lies in the future
   */
  ClinicalEvent record(
      String encounter,
      String ward,
      ClinicalEvent.Kind kind,
      @Nullable Instant at,
      boolean notForResuscitation,
      boolean expected,
      @Nullable String note,
      Actor actor);

  /** Oldest first. */
  List<ClinicalEvent> of(String encounter);

  /**
   * Oldest first.
   *
   * @param wards only these, or null for all
   * @param from inclusive
   * @param to exclusive
   */
  List<ClinicalEvent> list(@Nullable Set<String> wards, Instant from, Instant to);
}
