package org.driftward.ingest.fhir;

import java.time.Instant;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Function;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange.Put;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.core.Bookkeeping;
import org.driftward.ingest.core.PutRules;

/**
 * Who would be where once the bed moves of a request were made: so that a request is checked as a
 * whole before anything of it is kept. Used by one thread.
 */
final class HouseAfter {

  private final Function<String, Optional<Encounter>> before;
  private final PutRules rules;
  private final Instant now;
  private final Map<String, Optional<Encounter>> states = new HashMap<>();

  HouseAfter(EncounterDirectory directory, PutRules rules, Instant now) {
    this.before = directory.forOneRequest();
    this.rules = rules;
    this.now = now;
  }

  Optional<Encounter> find(String encounter) {
    return states.computeIfAbsent(encounter, before);
  }

  /** Makes the move here if it can be made; else says why not. */
  List<Fault> move(Put put) {
    var known = find(put.encounter());
    var faults = rules.check(known, put, now);
    if (faults.isEmpty()) {
      states.put(put.encounter(), Optional.of(Bookkeeping.apply(known, put)));
    }
    return faults;
  }
}
