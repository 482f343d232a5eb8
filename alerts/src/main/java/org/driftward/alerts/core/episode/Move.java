package org.driftward.alerts.core.episode;

/** What a state makes of an event. */
sealed interface Move {

  /**
   * @param kind what the journal calls it
   */
  record To(Standing standing, String kind) implements Move {}

  /** The event has no place in this state. */
  record Refused(String why) implements Move {}
}
