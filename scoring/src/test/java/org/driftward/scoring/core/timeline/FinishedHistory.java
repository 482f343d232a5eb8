package org.driftward.scoring.core.timeline;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Arrival.Observed;
import org.driftward.scoring.core.timeline.Arrival.Signed;
import org.driftward.scoring.core.timeline.Arrival.Told;

/**
 * The long way to the same end: waits until everything has arrived, keeps what counts, sorts it and
 * folds it once. No standing, no rewriting, no checkpoints.
 */
final class FinishedHistory {

  private FinishedHistory() {}

  static Map<String, Map<String, Snapshot>> snapshots(List<Arrival> story) {
    var facts = new HashMap<String, Facts>();
    var entries = new HashMap<String, Entry>();
    var encounters = new HashMap<String, String>();
    for (var arrival : story) {
      if (arrival instanceof Told told) {
        facts.merge(
            told.encounter().id(),
            Facts.NONE.with(told.encounter()),
            (known, more) -> known.with(told.encounter()));
      } else if (arrival instanceof Signed signed) {
        facts.merge(
            signed.plan().encounter(),
            Facts.NONE.with(signed.plan()),
            (known, more) -> known.with(signed.plan()));
      } else if (arrival instanceof Observed observed) {
        var entry = Entry.of(observed.assessment());
        encounters.put(entry.id(), observed.assessment().encounter());
        entries.merge(entry.id(), entry, (known, more) -> more.supersedes(known) ? more : known);
      }
    }
    var histories = new TreeMap<String, TreeMap<Moment, Entry>>();
    for (var entry : entries.values()) {
      if (!entry.retracted()) {
        var at = encounters.get(entry.id());
        var survivor = facts.getOrDefault(at, Facts.NONE).mergedInto();
        histories
            .computeIfAbsent(survivor == null ? at : survivor, id -> new TreeMap<>())
            .put(entry.moment(), entry);
      }
    }
    var snapshots = new TreeMap<String, Map<String, Snapshot>>();
    histories.forEach(
        (encounter, history) -> {
          var settings = new Fold.Settings(Rules.always(Fixtures.judge()), Integer.MAX_VALUE);
          var known = facts.getOrDefault(encounter, Facts.NONE);
          var fold = new Fold(settings, encounter, known, Head.EMPTY);
          var said = new TreeMap<String, Snapshot>();
          history.values().forEach(entry -> said.put(entry.id(), fold.next(entry)));
          snapshots.put(encounter, said);
        });
    return snapshots;
  }
}
