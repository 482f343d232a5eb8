package org.driftward.scoring.core;

import java.time.Instant;
import java.util.Objects;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;

/**
 * One value of one series, with where it came from.
 *
 * @param takenAt clinical time
 * @param assessment id of the assessment that carried it
 */
public record Reading(FindingKey key, FindingValue value, Instant takenAt, String assessment) {
  public Reading {
    Objects.requireNonNull(key, "key");
    Objects.requireNonNull(value, "value");
    Objects.requireNonNull(takenAt, "takenAt");
    Objects.requireNonNull(assessment, "assessment");
  }

  public String code() {
    return key.code();
  }
}
