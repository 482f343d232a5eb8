package org.driftward.scoring.core.timeline;

import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Arrival.Observed;
import org.driftward.scoring.core.timeline.Arrival.Signed;
import org.driftward.scoring.core.timeline.Arrival.Told;

/** What a {@link Recount} says of a story, by encounter and assessment. */
final class FinishedHistory {

  private FinishedHistory() {}

  static Map<String, Map<String, Snapshot>> snapshots(List<Arrival> story, Editions editions) {
    var recount = new Recount();
    for (var arrival : story) {
      if (arrival instanceof Told told) {
        recount.take(told.encounter());
      } else if (arrival instanceof Signed signed) {
        recount.take(signed.plan());
      } else if (arrival instanceof Observed observed) {
        recount.take(observed.assessment());
      }
    }
    var snapshots = new TreeMap<String, Map<String, Snapshot>>();
    for (var encounter : recount.encounters()) {
      var said = new TreeMap<String, Snapshot>();
      recount
          .snapshots(encounter, editions)
          .forEach(snapshot -> said.put(snapshot.assessment(), snapshot));
      if (!said.isEmpty()) {
        snapshots.put(encounter, said);
      }
    }
    return snapshots;
  }
}
