package org.driftward.ingest.core;

import java.time.Duration;

/**
 * What intake tolerates.
 *
 * @param clockSkew how far a sender's clock may run ahead of ours
 * @param beforeAdmission how long before admission findings may have been taken, for example in the
 *     emergency department
 * @param mostAssessments in one request
 */
public record IntakeLimits(Duration clockSkew, Duration beforeAdmission, int mostAssessments) {
  public IntakeLimits {
    if (clockSkew.isNegative()) {
      throw new IllegalArgumentException("clock skew " + clockSkew + " is negative");
    }
    if (beforeAdmission.isNegative()) {
      throw new IllegalArgumentException("before admission " + beforeAdmission + " is negative");
    }
    if (mostAssessments < 1) {
      throw new IllegalArgumentException("at most " + mostAssessments + " assessments");
    }
  }
}
