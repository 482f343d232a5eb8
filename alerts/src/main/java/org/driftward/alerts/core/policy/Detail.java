package org.driftward.alerts.core.policy;

import org.driftward.ingest.contract.Word;

/** How much about a patient may leave the house in a message. A patient's name never does. */
public enum Detail implements Word {
  /** Ward, bed and priority: enough to go there. */
  MINIMAL,
  /** Also the encounter, the reasons with their values, and what was done. */
  FULL
}
