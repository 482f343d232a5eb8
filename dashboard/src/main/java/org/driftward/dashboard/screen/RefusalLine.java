package org.driftward.dashboard.screen;

import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.IntakeDesk.Line;
import org.driftward.ingest.contract.IntakeDesk.State;

/**
 * One refusal in words.
 *
 * @param reasons the first of them
 * @param more how many further reasons there are
 * @param done whether there is nothing left to do about it
 */
public record RefusalLine(
    String id,
    String way,
    String origin,
    String target,
    Instant at,
    String size,
    List<Fault> reasons,
    int more,
    String state,
    boolean done) {

  private static final int FIRST = 3;

  static RefusalLine of(Line line) {
    var faults = line.faults();
    int shown = Math.min(FIRST, faults.size());
    return new RefusalLine(
        line.id(),
        IntakeWords.way(line.source()),
        line.origin(),
        line.target(),
        line.receivedAt(),
        Wording.count(line.size(), "byte", "bytes"),
        faults.subList(0, shown),
        faults.size() - shown,
        IntakeWords.state(line.state()),
        line.state() == State.ACCEPTED || line.state() == State.WAITING);
  }

  @Override
  public String toString() {
    return "RefusalLine[" + id + "]";
  }
}
