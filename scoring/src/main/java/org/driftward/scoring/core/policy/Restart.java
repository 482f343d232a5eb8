package org.driftward.scoring.core.policy;

import org.driftward.ingest.contract.Word;

/** A documented change after which the patient's earlier values may no longer be the usual ones. */
public enum Restart implements Word {
  /** The patient came to another ward; theatre is one. */
  TRANSFER,
  /** A clinician signed a care plan with another oxygen scale than before. */
  OXYGEN_SCALE,
  /** A clinician signed from when the usual values are new ones, as after surgery. */
  NEW_BASELINE,
  /** A clinician signed another care plan, whatever it says. */
  CARE_PLAN
}
