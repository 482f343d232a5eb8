package org.driftward.alerts.core.trigger;

import java.time.Instant;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.driftward.ingest.contract.Level;

/**
 * What one set of observations adds to what is remembered.
 *
 * @param set clinical time of the set
 * @param worst the level each lasting rule may have reached, missing inputs taken at their worst
 * @param drifting the series that lay far from the patient's own baseline
 * @param partial whether core observations were lacking
 */
public record Mark(Instant set, Map<String, Level> worst, Set<String> drifting, boolean partial) {
  public Mark {
    Objects.requireNonNull(set, "set");
    worst = Map.copyOf(worst);
    drifting = Set.copyOf(drifting);
  }
}
