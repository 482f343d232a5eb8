package org.driftward.ingest.fhir;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.core.Rule;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Bundle.BundleEntryComponent;
import org.hl7.fhir.r4.model.Bundle.HTTPVerb;
import org.hl7.fhir.r4.model.Encounter;
import org.hl7.fhir.r4.model.Observation;
import org.jspecify.annotations.Nullable;

/**
 * A Bundle of any type that carries Patient, Encounter, Location and Observation. Other resources
 * are none of ours and are passed over. Thread-safe.
 */
final class BundleReader {

  private final ObservationReader observations;
  private final EncounterReader encounters;

  BundleReader(Codings codings, EncounterDirectory directory, Clock clock) {
    this.observations = new ObservationReader(codings, clock);
    this.encounters = new EncounterReader(directory, clock);
  }

  /** Everything that the Bundle says. */
  Converted read(Bundle bundle, Reporter by) {
    var all = new Converted();
    readEach(bundle, by).forEach(all::addAll);
    return all;
  }

  /** What each entry says by itself, in the order of the Bundle. */
  List<Converted> readEach(Bundle bundle, Reporter by) {
    var references = References.of(bundle);
    var each = new ArrayList<Converted>();
    for (int i = 0; i < bundle.getEntry().size(); i++) {
      var into = new Converted();
      entry(bundle.getEntry().get(i), "/entry/" + i, references, by, into);
      each.add(into);
    }
    return each;
  }

  Converted read(Observation observation, @Nullable String ifNoneExist, Reporter by) {
    var into = new Converted();
    observations.read(observation, "", References.none(), by, ifNoneExist, into);
    return into;
  }

  private void entry(
      BundleEntryComponent entry, String at, References references, Reporter by, Converted into) {
    var method = entry.getRequest().getMethod();
    if (method != null && method != HTTPVerb.POST && method != HTTPVerb.PUT) {
      into.fault(
          at + "/request/method", Rule.UNSUPPORTED_REQUEST, "Only POST and PUT are done here");
      return;
    }
    var condition = entry.getRequest().getIfNoneExist();
    if (entry.getResource() instanceof Encounter encounter) {
      encounters.read(encounter, at + "/resource", references, condition, into);
    } else if (entry.getResource() instanceof Observation observation) {
      observations.read(observation, at + "/resource", references, by, condition, into);
    }
  }
}
