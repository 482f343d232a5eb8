package org.driftward.dashboard.core;

import java.time.Duration;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Finds assessments that are here and of which scoring has said nothing. Usually there are none; if
 * scoring stands still, a board would go on showing older scores as if they were the newest.
 * Thread-safe, blocking.
 */
public interface UnscoredReader {

  /** Scoring takes a fraction of a second; what waits longer than this is worth a word. */
  Duration PATIENCE = Duration.ofSeconds(30);

  /**
   * What came in longer ago, or before the last few of the patient, is not looked for: it is in the
   * history, without a score.
   */
  Duration REACH = Duration.ofHours(1);

  /** A patient who is here and has an assessment without a score. */
  record Unscored(String encounter, String ward, @Nullable String bed) {}

  /** All of the hospital, by ward and bed. */
  List<Unscored> unscored();
}
