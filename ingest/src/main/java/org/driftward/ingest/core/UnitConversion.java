package org.driftward.ingest.core;

import java.math.BigDecimal;
import java.util.Optional;

/** Turns a value of one UCUM unit into another. */
@FunctionalInterface
public interface UnitConversion {

  /**
   * @return empty if one of them is no unit, or they do not measure the same
   */
  Optional<BigDecimal> convert(BigDecimal value, String from, String to);
}
