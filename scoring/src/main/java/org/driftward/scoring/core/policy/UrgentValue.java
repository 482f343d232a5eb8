package org.driftward.scoring.core.policy;

import java.util.Objects;
import java.util.Set;
import org.driftward.ingest.contract.CallNow;
import org.jspecify.annotations.Nullable;

/**
 * A life-threatening value of one finding: it calls somebody beside every score, so that no patient
 * is without a floor.
 *
 * @param code of the finding
 * @param only populations of which the patient must belong to one; empty for everybody
 * @param not populations that the patient must not belong to
 * @param scale the oxygen scale it holds on, or null for both
 * @param when the values
 */
public record UrgentValue(
    String code, Set<String> only, Set<String> not, @Nullable Integer scale, CallNow when) {

  public UrgentValue {
    Objects.requireNonNull(code, "code");
    Objects.requireNonNull(when, "when");
    only = only == null ? Set.of() : Set.copyOf(only);
    not = not == null ? Set.of() : Set.copyOf(not);
  }
}
