package org.driftward.ingest.contract;

import java.util.Optional;

/**
 * Who is where now, as of the newest bed move this process knows. On a miss it first catches up
 * with the end of {@link Topic#ENCOUNTERS}, so an encounter that another process has acknowledged
 * is found. Thread-safe.
 */
public interface EncounterDirectory {
  Optional<Encounter> find(String encounter);
}
