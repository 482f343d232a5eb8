package org.driftward.ingest.fhir;

import java.time.Clock;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.EncounterDirectory;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Observation;

/**
 * A Bundle of any type that carries Patient, Encounter, Location and Observation. Other resources
 * are none of ours and are passed over. Thread-safe.
 */
final class BundleReader {

  private final ObservationReader observations;
  private final EncounterReader encounters;

  BundleReader(Catalogue catalogue, EncounterDirectory directory, Clock clock) {
    this.observations = new ObservationReader(new CodeMap(catalogue), clock);
    this.encounters = new EncounterReader(directory, clock);
  }

  Converted read(Bundle bundle, String by) {
    var into = new Converted();
    var references = References.of(bundle);
    var entries = bundle.getEntry();
    for (int i = 0; i < entries.size(); i++) {
      var resource = entries.get(i).getResource();
      var pointer = "/entry/" + i + "/resource";
      if (resource instanceof Encounter encounter) {
        encounters.read(encounter, pointer, references, into);
      } else if (resource instanceof Observation observation) {
        observations.read(observation, pointer, references, by, into);
      }
    }
    return into;
  }

  Converted read(Observation observation, String by) {
    var into = new Converted();
    observations.read(observation, "", References.none(), by, into);
    return into;
  }
}
