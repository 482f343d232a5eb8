package org.driftward.alerts.core.trigger;

import java.util.List;

/**
 * What a picture gives reason to.
 *
 * @param fired gravest first
 * @param suppressed what would have fired but for the care plan's altered limits
 * @param mark what to remember of this set
 */
public record Evaluation(List<Trigger> fired, List<Trigger> suppressed, Mark mark) {
  public Evaluation {
    fired = List.copyOf(fired);
    suppressed = List.copyOf(suppressed);
  }
}
