package org.driftward.scoring.core.policy;

import java.time.Duration;
import java.util.Collections;
import java.util.HashMap;
import java.util.Map;

/**
 * How long a value serves as an input. Local policy; there is no published rule.
 *
 * @param otherwise for every code that {@code of} does not name
 * @param of by the code of the finding
 */
public record Validity(Duration otherwise, Map<String, Duration> of) {

  public Validity {
    Require.positive("validity otherwise", otherwise);
    // A hash map, as it is asked for every reading of every picture.
    of = of == null ? Map.of() : Collections.unmodifiableMap(new HashMap<>(of));
    of.forEach((code, time) -> Require.positive("validity of " + code, time));
  }

  /** How long a value of {@code code} serves. */
  public Duration of(String code) {
    return of.getOrDefault(code, otherwise);
  }
}
