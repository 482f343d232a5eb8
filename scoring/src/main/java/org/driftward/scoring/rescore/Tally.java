package org.driftward.scoring.rescore;

import java.util.ArrayList;
import java.util.List;
import java.util.SortedMap;
import java.util.TreeMap;
import org.driftward.scoring.core.compare.Difference;

/** Counts of a re-scoring while it runs. Thread-safe. */
final class Tally {

  private long records;
  private long unreadable;
  private long encounters;
  private long moments;
  private long differing;
  private final SortedMap<String, Long> byKind = new TreeMap<>();
  private final List<Counts.OfEncounter> differingEncounters = new ArrayList<>();
  private final List<String> plansMissing = new ArrayList<>();

  synchronized void read() {
    records++;
  }

  synchronized void unreadable() {
    unreadable++;
  }

  synchronized void compared(String encounter, long compared, long differed, boolean gap) {
    encounters++;
    moments += compared;
    differing += differed;
    if (differed > 0) {
      differingEncounters.add(new Counts.OfEncounter(encounter, compared, differed));
    }
    if (gap) {
      plansMissing.add(encounter);
    }
  }

  synchronized void differs(Difference difference) {
    byKind.merge(difference.kind(), 1L, Long::sum);
  }

  synchronized Counts counts() {
    return new Counts(
        records,
        unreadable,
        encounters,
        moments,
        differing,
        new TreeMap<>(byKind),
        List.copyOf(differingEncounters),
        List.copyOf(plansMissing));
  }
}
