package org.driftward.scoring.core.timeline;

import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/** Folds entries into a head, oldest first. For one use by one thread. */
final class Fold {

  private final Settings settings;
  private final String encounter;
  private final Facts facts;
  private final Rules rules;
  private final List<Head> checkpoints = new ArrayList<>();
  private Head head;

  /**
   * @param checkpointEvery a head is kept each time so many assessments have been folded in
   */
  record Settings(Editions editions, int checkpointEvery) {}

  /** Goes on from a head in hand. */
  Fold(Settings settings, String encounter, Facts facts, Head start) {
    this.settings = settings;
    this.encounter = encounter;
    this.facts = facts;
    this.rules = settings.editions().rules(facts.adopted());
    this.head = start;
  }

  /**
   * Goes on from the newest checkpoint before a moment.
   *
   * @param before null for the newest of all
   */
  static Fold from(
      Settings settings, String encounter, Facts facts, Entries entries, @Nullable Moment before) {
    var stored = entries.checkpoint(before).orElse(Head.EMPTY);
    return from(settings, encounter, facts, stored);
  }

  /** Goes on from a head as it was kept. */
  static Fold from(Settings settings, String encounter, Facts facts, Head stored) {
    var rules = settings.editions().rules(facts.adopted());
    return new Fold(settings, encounter, facts, revived(stored, rules, facts));
  }

  /** Takes in an entry; returns what is to be said of it, not yet stamped for sending. */
  Snapshot next(Entry entry) {
    if (entry.retracted()) {
      return withdrawn(entry);
    }
    var judge = rules.at(entry.moment().takenAt());
    var step = judge.step(encounter, head, entry, facts);
    head = step.head();
    if (head.sets() % settings.checkpointEvery() == 0) {
      checkpoints.add(head);
    }
    return facts.merged() ? withdrawn(entry) : step.snapshot();
  }

  /** What is said of an assessment that was retracted here or counts elsewhere. */
  Snapshot withdrawn(Entry entry) {
    return rules.at(entry.moment().takenAt()).withdrawn(encounter, entry);
  }

  Head head() {
    return head;
  }

  /** Heads to keep, oldest first. */
  List<Head> checkpoints() {
    return checkpoints;
  }

  private static Head revived(Head stored, Rules rules, Facts facts) {
    var strands = new TreeMap<>(stored.strands());
    strands.replaceAll((key, strand) -> rules.at(strand.newest().takenAt()).revived(strand, facts));
    var totals = new TreeMap<>(stored.totals());
    totals.replaceAll((id, strand) -> rules.at(strand.newest().takenAt()).revivedTotal(strand));
    return new Head(stored.at(), stored.sets(), strands, totals, stored.sums(), stored.newestSet());
  }
}
