package org.driftward.scoring.core.timeline;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;

/**
 * The long way to the same end: waits until everything has arrived, keeps what counts, sorts it and
 * folds it once. No standing, no rewriting, no checkpoints. For scoring a log again, and the
 * measure that {@link Timeline} is held to. For one use by one thread.
 */
public final class Recount {

  private final Map<String, Facts> facts = new HashMap<>();
  private final Map<String, Map<String, Entry>> entries = new HashMap<>();
  private final Map<String, Set<String>> merged = new HashMap<>();

  public void take(Encounter encounter) {
    know(encounter.id(), facts(encounter.id()).with(encounter));
  }

  public void take(CarePlan plan) {
    know(plan.encounter(), facts(plan.encounter()).with(plan));
  }

  public void take(Assessment assessment) {
    var entry = Entry.of(assessment);
    entries
        .computeIfAbsent(assessment.encounter(), id -> new HashMap<>())
        .merge(entry.id(), entry, Recount::counting);
  }

  /** Whether the encounter's assessments count in another one. */
  public boolean isMerged(String encounter) {
    return facts(encounter).merged();
  }

  /** Every encounter that assessments of its own have been taken in for and not forgotten. */
  public Set<String> withAssessments() {
    return Set.copyOf(entries.keySet());
  }

  /** These, and every encounter that another was merged into. */
  public Set<String> encounters() {
    var all = new HashSet<>(entries.keySet());
    all.addAll(merged.keySet());
    return all;
  }

  /** Forgets the encounter's assessments, not its facts. */
  public void forget(String encounter) {
    entries.remove(encounter);
  }

  /** Versions of the encounter's care plans that are known to have been and have not been seen. */
  public int plansMissing(String encounter) {
    return facts(encounter).plansMissing();
  }

  /**
   * What there is to say of every assessment that counts in the encounter, oldest first, judged by
   * all of these editions; empty where the encounter was merged into another.
   */
  public List<Snapshot> snapshots(String encounter, Editions editions) {
    var known = facts(encounter).adopting(editions.versions());
    if (known.merged()) {
      return List.of();
    }
    var settings = new Fold.Settings(editions, Integer.MAX_VALUE);
    var fold = new Fold(settings, encounter, known, Head.EMPTY);
    var history = new TreeMap<Moment, Entry>();
    for (var entry : gathered(encounter, new HashSet<>()).values()) {
      if (!entry.retracted()) {
        history.put(entry.moment(), entry);
      }
    }
    var snapshots = new ArrayList<Snapshot>(history.size());
    history.values().forEach(entry -> snapshots.add(fold.next(entry)));
    return snapshots;
  }

  /** The encounter's own assessments with those of every encounter that was merged into it. */
  private Map<String, Entry> gathered(String encounter, Set<String> visited) {
    var gathered = new HashMap<>(entries.getOrDefault(encounter, Map.of()));
    visited.add(encounter);
    for (var other : merged.getOrDefault(encounter, Set.of())) {
      if (!visited.contains(other)) {
        gathered(other, visited)
            .forEach((id, entry) -> gathered.merge(id, entry.from(other), Recount::counting));
      }
    }
    return gathered;
  }

  private static Entry counting(Entry known, Entry more) {
    return more.supersedes(known) ? more : known;
  }

  private Facts facts(String encounter) {
    return facts.getOrDefault(encounter, Facts.NONE);
  }

  private void know(String encounter, Facts now) {
    var before = facts(encounter).mergedInto();
    if (before != null) {
      merged.getOrDefault(before, new HashSet<>()).remove(encounter);
    }
    if (now.mergedInto() != null) {
      merged.computeIfAbsent(now.mergedInto(), id -> new HashSet<>()).add(encounter);
    }
    facts.put(encounter, now);
  }
}
