package org.driftward.dashboard.core;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.Objects;

/**
 * The bounds of the leading score at one moment; a point of a card's small line.
 *
 * @param asOf clinical time
 */
public record Total(Instant asOf, BigDecimal low, BigDecimal high) {
  public Total {
    Objects.requireNonNull(asOf, "asOf");
    if (low.compareTo(high) > 0) {
      throw new IllegalArgumentException("low " + low + " is above high " + high);
    }
  }
}
