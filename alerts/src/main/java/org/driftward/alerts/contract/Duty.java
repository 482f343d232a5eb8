package org.driftward.alerts.contract;

import org.driftward.ingest.contract.Word;

/** What somebody on duty is there for. */
public enum Duty implements Word {
  /** Looks after the patients of some beds. */
  BEDSIDE,
  /** In charge of the ward. */
  CHARGE,
  RESPONSE,
  ON_CALL
}
