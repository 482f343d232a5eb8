package org.driftward.alerts.core.trigger;

import java.time.Instant;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import org.driftward.alerts.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * What is remembered of one set of observations to judge the next ones by.
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

  boolean reaches(String rule, Level level) {
    @Nullable Level reached = worst.get(rule);
    return reached != null && reached.compareTo(level) >= 0;
  }

  boolean sameAs(Mark other) {
    return worst.equals(other.worst) && drifting.equals(other.drifting) && partial == other.partial;
  }
}
