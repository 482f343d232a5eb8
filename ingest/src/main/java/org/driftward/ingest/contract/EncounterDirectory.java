package org.driftward.ingest.contract;

import java.util.HashMap;
import java.util.Optional;
import java.util.function.Function;

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

  /**
   * For one request that asks about many encounters, by one thread: what was answered once stays
   * so, and the end of the topic is waited for once at most, at the first miss. That suffices,
   * because the request was there before.
   */
  default Function<String, Optional<Encounter>> forOneRequest() {
    var answers = new HashMap<String, Optional<Encounter>>();
    return encounter -> answers.computeIfAbsent(encounter, this::find);
  }
}
