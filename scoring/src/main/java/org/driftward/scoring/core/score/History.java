package org.driftward.scoring.core.score;

import java.time.Instant;
import java.util.List;
import org.driftward.scoring.core.Reading;

/**
 * The past of one finding, for the few inputs that are sums over hours. A score whose inputs all
 * come from the newest readings never asks.
 */
@FunctionalInterface
public interface History {

  /** No past is at hand: inputs that need one are missing. */
  History NONE = (code, from) -> List.of();

  /**
   * The readings of {@code code} without site and side, taken at or after {@code from} and no later
   * than the picture, oldest first.
   */
  List<Reading> since(String code, Instant from);
}
