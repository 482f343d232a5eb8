package org.driftward.alerts.contract;

import java.util.Objects;

/**
 * What is said when a patient is handed over, in the order of ISBAR. Facts are filled in from the
 * record; assessment and recommendation are a person's.
 */
public record HandoverText(
    String identify,
    String situation,
    String background,
    String assessment,
    String recommendation) {

  /** How a drafted recommendation begins, so that nobody takes it for a person's. */
  public static final String DRAFT = "Draft from policy, to be changed or confirmed: ";

  public HandoverText {
    Objects.requireNonNull(identify, "identify");
    Objects.requireNonNull(situation, "situation");
    Objects.requireNonNull(background, "background");
    Objects.requireNonNull(assessment, "assessment");
    Objects.requireNonNull(recommendation, "recommendation");
  }

  /** Says nothing about the patient. */
  @Override
  public String toString() {
    return "HandoverText[redacted]";
  }
}
