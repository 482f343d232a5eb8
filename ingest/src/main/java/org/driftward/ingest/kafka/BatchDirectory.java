package org.driftward.ingest.kafka;

import java.util.Optional;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterDirectory;

/**
 * The directory for inputs that were there before the first of them was looked at: the end of the
 * topic is waited for at the first miss, and not again before the next batch, so that many unknown
 * encounters do not hold up the known ones behind them. Moves made meanwhile are seen. Used by one
 * thread.
 */
public final class BatchDirectory implements EncounterDirectory {

  private final KafkaEncounterDirectory house;
  private boolean caughtUp;

  public BatchDirectory(KafkaEncounterDirectory house) {
    this.house = house;
  }

  /** What is asked from now on was there by now. */
  public void nextBatch() {
    caughtUp = false;
  }

  @Override
  public Optional<Encounter> find(String encounter) {
    var known = house.known(encounter);
    if (known.isPresent() || caughtUp) {
      return known;
    }
    var newest = house.findNewest(encounter);
    caughtUp = true;
    return newest;
  }
}
