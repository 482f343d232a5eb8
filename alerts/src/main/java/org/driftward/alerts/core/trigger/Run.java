package org.driftward.alerts.core.trigger;

import java.time.Instant;
import java.util.Objects;
import org.driftward.alerts.core.policy.Recovery;
import org.jspecify.annotations.Nullable;

/**
 * So many sets running, the newest included.
 *
 * @param since clinical time of the first of them
 */
public record Run(Instant since, int sets) {

  public Run {
    Objects.requireNonNull(since, "since");
  }

  static Run extended(@Nullable Run before, Instant set) {
    return before == null ? new Run(set, 1) : new Run(before.since, before.sets + 1);
  }

  boolean lasts(Recovery recovery, Instant newest) {
    return sets >= recovery.sets() && !since.plus(recovery.lasting()).isAfter(newest);
  }
}
