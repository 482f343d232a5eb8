package org.driftward.scoring.core.timeline;

import java.util.HashMap;
import java.util.Iterator;
import java.util.List;
import java.util.Map;
import java.util.NavigableMap;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;

/** The history of one encounter in memory. */
public final class MemoryEntries implements Entries {

  private final NavigableMap<Moment, Entry> byMoment = new TreeMap<>();
  private final Map<String, Entry> byId = new HashMap<>();
  private final NavigableMap<Moment, Head> checkpoints = new TreeMap<>();

  @Override
  public Optional<Entry> find(String assessment) {
    return Optional.ofNullable(byId.get(assessment));
  }

  @Override
  public Iterator<Entry> after(@Nullable Moment moment) {
    var later = moment == null ? byMoment : byMoment.tailMap(moment, false);
    return List.copyOf(later.values()).iterator();
  }

  @Override
  public Optional<Head> checkpoint(@Nullable Moment before) {
    var found = before == null ? checkpoints.lastEntry() : checkpoints.lowerEntry(before);
    return Optional.ofNullable(found).map(Map.Entry::getValue);
  }

  public void keep(Outcome outcome) {
    var removed = outcome.removed();
    if (removed != null) {
      byMoment.remove(removed.moment());
      byId.remove(removed.id());
    }
    var kept = outcome.kept();
    if (kept != null) {
      byMoment.put(kept.moment(), kept);
      byId.put(kept.id(), kept);
    }
    if (outcome.rewrittenFrom() != null) {
      checkpoints.tailMap(outcome.rewrittenFrom(), true).clear();
    }
    for (var head : outcome.checkpoints()) {
      var at = head.at();
      if (at != null) {
        checkpoints.put(at, head);
      }
    }
  }
}
