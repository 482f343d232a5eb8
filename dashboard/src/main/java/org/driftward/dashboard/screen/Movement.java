package org.driftward.dashboard.screen;

/** Which way a patient is going, as a drawn arrow and a word. */
public enum Movement {
  RISING("rising"),
  STEADY("steady"),
  FALLING("falling"),
  /** Too few sets to say. */
  UNKNOWN("no trend yet");

  private final String words;

  Movement(String words) {
    this.words = words;
  }

  public String words() {
    return words;
  }
}
