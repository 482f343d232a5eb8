package org.driftward.scoring.core.timeline;

import java.util.List;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * What one record makes of a timeline: what to keep, and what to say. Apply it as a whole or not at
 * all.
 *
 * @param standing after the record
 * @param removed an entry to forget: gone, or replaced by {@code kept}; or null
 * @param kept an entry to keep, or null
 * @param appended whether the record only added {@code kept} after the head, so that facts and
 *     earlier checkpoints are what they were
 * @param rewrittenFrom stored checkpoints at or after this moment no longer hold; null if all do
 * @param checkpoints heads to keep
 * @param snapshots in the order to send; at most the last one is the newest picture
 * @param moves assessments to pass on to another encounter
 */
public record Outcome(
    Standing standing,
    @Nullable Entry removed,
    @Nullable Entry kept,
    boolean appended,
    @Nullable Moment rewrittenFrom,
    List<Head> checkpoints,
    List<Snapshot> snapshots,
    List<Move> moves) {

  public Outcome {
    checkpoints = List.copyOf(checkpoints);
    snapshots = List.copyOf(snapshots);
    moves = List.copyOf(moves);
  }

  /** A record that says nothing new. */
  static Outcome nothing(Standing standing) {
    return new Outcome(standing, null, null, true, null, List.of(), List.of(), List.of());
  }

  /** Whether there is nothing to keep. */
  public boolean isNothing() {
    return appended && kept == null;
  }

  /** The same, with assessments to pass on. */
  Outcome moving(List<Move> entries) {
    return new Outcome(
        standing, removed, kept, appended, rewrittenFrom, checkpoints, snapshots, entries);
  }
}
