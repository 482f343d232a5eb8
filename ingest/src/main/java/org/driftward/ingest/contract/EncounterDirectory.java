package org.driftward.ingest.contract;

import java.util.Optional;

/**
 * Who is where now, as of the newest bed move this process knows. On a miss it first catches up
 * with the end of {@link Topic#ENCOUNTERS}, so an encounter that another process has acknowledged
 * is found. Thread-safe.
 */
public interface EncounterDirectory {

  /**
   * @return empty only if the encounter does not exist
   * @throws AssessmentIntake.UnavailableException if it is not known here and Kafka does not say
   *     within a bounded wait whether it exists
   */
  Optional<Encounter> find(String encounter);
}
