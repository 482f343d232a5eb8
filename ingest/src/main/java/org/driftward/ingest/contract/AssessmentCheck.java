package org.driftward.ingest.contract;

import java.time.Instant;
import java.util.List;

/**
 * What intake would say of an assessment, without taking it in: nothing is kept, not even a
 * refusal. A pure function; thread-safe.
 */
@FunctionalInterface
public interface AssessmentCheck {

  /**
   * @param encounter the one the assessment names, as far as it is known
   * @param now by the ward's clock
   * @return every fault, its pointer counted in the assessment, for example {@code
   *     /findings/2/unit}; empty if it would be taken in
   */
  List<Fault> check(Assessment assessment, Encounter encounter, Instant now);
}
