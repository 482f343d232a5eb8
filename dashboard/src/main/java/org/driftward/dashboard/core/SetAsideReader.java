package org.driftward.dashboard.core;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Finds what could not be worked and was set aside while everything else went on, so that whoever
 * looks after the patient knows. Usually there is nothing. Thread-safe, blocking.
 */
public interface SetAsideReader {

  /**
   * @param means what follows, a sentence
   * @param encounter or null where it is not about one, or nobody knows whose it is
   * @param ward or null where nobody knows it
   */
  record Missing(
      String means, @Nullable String encounter, @Nullable String ward, @Nullable String bed) {}

  /** All of the hospital, the oldest first. */
  List<Missing> missing();
}
