package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.time.Clock;
import org.driftward.ingest.contract.IntakeDesk.State;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.core.Gate.Passage;

/** What was asked for and is still to be replayed. Thread-safe. */
@Singleton
public class ReplayQueue {

  private final IntakeStore database;
  private final Clock clock;

  public ReplayQueue(IntakeStore database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /** Brings bytes in again. */
  @FunctionalInterface
  public interface Player {
    Passage play(Received received, Bearer bearer);
  }

  /**
   * Does the oldest waiting replay and journals what became of it.
   *
   * @return false if none is waiting
   * @throws RuntimeException what the player throws; the replay then goes on waiting
   */
  public boolean play(Player player) {
    return database.transaction(
        handle -> {
          var next = Replays.next(handle);
          next.ifPresent(
              due -> {
                var passage = player.play(due.received(), new Bearer(due.by(), due.wards()));
                Replays.done(handle, due, state(passage), passage.faults(), clock.instant());
              });
          return next.isPresent();
        });
  }

  private static State state(Passage passage) {
    if (!passage.kept()) {
      return State.REFUSED;
    }
    return passage.faults().isEmpty() ? State.ACCEPTED : State.PARTLY;
  }
}
