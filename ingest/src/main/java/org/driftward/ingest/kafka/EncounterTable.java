package org.driftward.ingest.kafka;

import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.ConcurrentHashMap;
import org.driftward.ingest.contract.Encounter;

/** The newest version of every encounter, in memory. Thread-safe. */
final class EncounterTable {

  private final Map<String, Encounter> newest = new ConcurrentHashMap<>();

  Optional<Encounter> find(String encounter) {
    return Optional.ofNullable(newest.get(encounter));
  }

  /**
   * Of two versions the higher stays. Of two equal ones, which two processes may have written in
   * the same moment, the later in the topic stays, so that every process ends with the same.
   */
  void take(Encounter encounter) {
    newest.merge(
        encounter.id(),
        encounter,
        (known, told) -> told.version() >= known.version() ? told : known);
  }

  List<Encounter> ofPatient(String patient) {
    return newest.values().stream()
        .filter(encounter -> encounter.patient().id().equals(patient))
        .sorted(Comparator.comparing(Encounter::id))
        .toList();
  }

  void remove(String encounter) {
    newest.remove(encounter);
  }
}
