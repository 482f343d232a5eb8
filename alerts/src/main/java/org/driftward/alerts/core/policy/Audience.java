package org.driftward.alerts.core.policy;

import org.driftward.ingest.contract.Word;

/** Whom a rung calls. Which account that is now, the shift says. */
public enum Audience implements Word {
  BEDSIDE_NURSE("bedside nurse"),
  CHARGE_NURSE("charge nurse"),
  RESPONSE_TEAM("response team"),
  ON_CALL("doctor on call");

  private final String words;

  Audience(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
