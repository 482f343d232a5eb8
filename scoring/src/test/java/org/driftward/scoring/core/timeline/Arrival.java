package org.driftward.scoring.core.timeline;

import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;

/** Something that arrives about an encounter. */
public sealed interface Arrival {

  record Observed(Assessment assessment) implements Arrival {}

  record Told(Encounter encounter) implements Arrival {}

  record Signed(CarePlan plan) implements Arrival {}
}
