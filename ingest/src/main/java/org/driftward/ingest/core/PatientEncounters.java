package org.driftward.ingest.core;

import java.util.List;
import org.driftward.ingest.contract.Encounter;

/** Every stay of one patient. */
@FunctionalInterface
public interface PatientEncounters {

  /**
   * @throws org.driftward.ingest.contract.AssessmentIntake.UnavailableException if Kafka does not
   *     say within a bounded wait
   */
  List<Encounter> of(String patient);
}
