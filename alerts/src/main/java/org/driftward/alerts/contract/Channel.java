package org.driftward.alerts.contract;

import org.driftward.ingest.contract.Word;

/** By what people are told of an alarm. */
public enum Channel implements Word {
  /** The board of the ward and the response queue. Always. */
  BOARD,
  /** An audible tone of a page that has its sound switched on. */
  TONE,
  MAIL,
  /** A signed HTTP call to a program that pages or telephones. */
  WEBHOOK;

  /** Whether a message leaves the house for an address, and can fail to arrive. */
  public boolean leaves() {
    return this == MAIL || this == WEBHOOK;
  }
}
