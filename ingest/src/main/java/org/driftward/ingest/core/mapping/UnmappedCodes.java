package org.driftward.ingest.core.mapping;

import org.jspecify.annotations.Nullable;

/**
 * Hears of every code that means nothing to us yet, so that somebody can map it. Thread-safe; must
 * not fail and must not wait.
 */
@FunctionalInterface
public interface UnmappedCodes {

  /**
   * @param text what the sender calls it, or null; the name of a kind of observation, never a value
   * @param unit the unit that the sender gave with it, or null
   */
  void seen(ForeignCode code, @Nullable String text, @Nullable String unit);
}
