package org.driftward.alerts.core.policy;

import java.util.Objects;
import org.driftward.ingest.contract.Level;

/** Who is told, and how long each has, for each level. */
public record Ladder(Response high, Response medium, Response low) {

  public Ladder {
    Objects.requireNonNull(high, "high");
    Objects.requireNonNull(medium, "medium");
    Objects.requireNonNull(low, "low");
  }

  public Response of(Level level) {
    return switch (level) {
      case HIGH -> high;
      case MEDIUM -> medium;
      case LOW -> low;
    };
  }
}
