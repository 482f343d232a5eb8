package org.driftward.scoring.core.policy;

import org.driftward.ingest.contract.Word;

/** A documented change after which the patient's earlier values may no longer be the usual ones. */
public enum Restart implements Word {
  /** The patient came to another ward; theatre is one. */
  TRANSFER,
  /** A clinician signed another care plan. */
  CARE_PLAN
}
