package org.driftward.alerts.core.episode;

import org.driftward.ingest.contract.Word;

/** The clocks that may run for an encounter, at most one of each. */
public enum DeadlineKind implements Word {
  /** The running episode waits for somebody. */
  EPISODE,
  /** The next set of observations is late. */
  OVERDUE,
  /** The care plan ends. */
  CARE_PLAN
}
