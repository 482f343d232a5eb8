package org.driftward.alerts.contract;

import org.driftward.ingest.contract.Word;

/** Where an episode stands. */
public enum EpisodeState implements Word {
  /** Nobody has answered; the ladder climbs. */
  OPEN,
  /** Somebody owns it and is expected at the bedside. */
  ACKNOWLEDGED,
  /** Somebody is or was at the bedside; a reassessment is expected. */
  ATTENDED,
  /** Rests with a reason, a signature and an end. */
  HELD,
  /** Over; the next trigger opens a new one. */
  CLOSED
}
