package org.driftward.alerts.core.trigger;

import java.time.Instant;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/**
 * For how long one rule has stayed below each level; null where the newest set may have reached it.
 */
public record Below(@Nullable Run low, @Nullable Run medium, @Nullable Run high) {

  static final Below NOTHING = new Below(null, null, null);

  @Nullable Run of(Level level) {
    return switch (level) {
      case LOW -> low;
      case MEDIUM -> medium;
      case HIGH -> high;
    };
  }

  /**
   * @param reached the highest level that the set may have reached, or null for none
   */
  Below after(@Nullable Level reached, Instant set) {
    return new Below(
        next(Level.LOW, reached, set),
        next(Level.MEDIUM, reached, set),
        next(Level.HIGH, reached, set));
  }

  private @Nullable Run next(Level level, @Nullable Level reached, Instant set) {
    boolean below = reached == null || reached.compareTo(level) < 0;
    return below ? Run.extended(of(level), set) : null;
  }
}
