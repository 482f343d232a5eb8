package org.driftward.scoring.core.timeline;

import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.driftward.scoring.core.timeline.Arrival.Observed;
import org.driftward.scoring.core.timeline.Arrival.Signed;
import org.driftward.scoring.core.timeline.Arrival.Told;

/** Runs timelines of encounters in memory, moves between them included. */
final class Office {

  private Timeline timeline;
  private final Listener listener = new Listener();
  private final Map<String, MemoryEntries> entries = new HashMap<>();
  private final Map<String, Standing> kept = new HashMap<>();
  private final Map<String, Standing> standings = new HashMap<>();

  Office(Timeline timeline) {
    this.timeline = timeline;
  }

  Listener listener() {
    return listener;
  }

  /** A restart: what was only in memory is gone. */
  void restart() {
    standings.clear();
  }

  /** One more edition is known; encounters learn of it when something arrives for them. */
  void adopt(Edition edition) {
    timeline = timeline.under(timeline.editions().with(edition));
  }

  /** Every encounter learns of every edition. */
  void catchUp() {
    for (var encounter : List.copyOf(kept.keySet())) {
      catchUp(encounter);
    }
  }

  private void catchUp(String encounter) {
    apply(timeline.adopt(standing(encounter), entries(encounter)));
  }

  void receive(Arrival arrival) {
    if (arrival instanceof Observed observed) {
      var entry = Entry.of(observed.assessment());
      var encounter = observed.assessment().encounter();
      catchUp(encounter);
      apply(timeline.take(standing(encounter), entries(encounter), entry, null));
    } else if (arrival instanceof Told told) {
      var encounter = told.encounter().id();
      catchUp(encounter);
      apply(timeline.take(standing(encounter), entries(encounter), told.encounter(), null));
    } else if (arrival instanceof Signed signed) {
      var encounter = signed.plan().encounter();
      catchUp(encounter);
      apply(timeline.take(standing(encounter), entries(encounter), signed.plan(), null));
    }
  }

  private void apply(Outcome outcome) {
    var standing = outcome.standing();
    entries(standing.encounter()).keep(outcome);
    standings.put(standing.encounter(), standing);
    kept.put(standing.encounter(), standing);
    outcome.snapshots().forEach(listener::hear);
    for (var move : outcome.moves()) {
      catchUp(move.to());
      var there = standing(move.to());
      apply(
          move.arrives()
              ? timeline.take(there, entries(move.to()), move.entry(), null)
              : timeline.release(there, entries(move.to()), move.entry(), null));
    }
  }

  private MemoryEntries entries(String encounter) {
    return entries.computeIfAbsent(encounter, id -> new MemoryEntries());
  }

  private Standing standing(String encounter) {
    return standings.computeIfAbsent(
        encounter,
        id -> {
          var before = kept.getOrDefault(id, new Standing(id, Facts.NONE, Head.EMPTY, 0));
          return timeline.resume(id, before.facts(), before.sequence(), entries(id));
        });
  }
}
