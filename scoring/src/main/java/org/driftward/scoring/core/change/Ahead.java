package org.driftward.scoring.core.change;

import org.jspecify.annotations.Nullable;

/** What lies ahead of a series that goes on in its direction. */
@FunctionalInterface
public interface Ahead {

  /** The next value above the newest that matters, or below it; null where none does. */
  @Nullable Double threshold(boolean up);
}
