package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import org.jspecify.annotations.Nullable;

/**
 * Reads an encounter's past piece by piece, newest first, at a cost that follows the piece and not
 * the past. It does not ask whether the reader may see it: the edge does. Thread-safe, blocking.
 */
public interface MomentReader {

  /**
   * A place in an encounter's past.
   *
   * @param takenAt clinical time of the assessment there
   * @param assessment its id, because several may be of one time
   */
  record Mark(Instant takenAt, String assessment) {
    public Mark {
      Objects.requireNonNull(takenAt, "takenAt");
      Objects.requireNonNull(assessment, "assessment");
    }
  }

  /**
   * @param from inclusive
   * @param to exclusive
   * @param start the first one wanted, or null for the newest
   */
  List<Moment> read(String encounter, Instant from, Instant to, @Nullable Mark start, int limit);

  /** The assessment of which this is the {@code PublishedId.moment}. */
  Optional<Moment> named(String moment);
}
