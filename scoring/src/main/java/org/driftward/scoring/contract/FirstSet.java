package org.driftward.scoring.contract;

import java.time.Duration;
import java.time.Instant;
import java.util.Objects;

/**
 * When the first set of observations is due: somebody who was admitted and never measured is
 * overdue like anybody else.
 *
 * @param within how soon after admission. Local policy; NICE CG50 asks for a set on admission
 */
public record FirstSet(Duration within) {
  public FirstSet {
    Objects.requireNonNull(within, "within");
  }

  public Instant due(Instant admitted) {
    return admitted.plus(within);
  }
}
