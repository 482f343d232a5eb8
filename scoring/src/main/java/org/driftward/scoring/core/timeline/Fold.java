package org.driftward.scoring.core.timeline;

import java.util.ArrayList;
import java.util.List;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/** Folds entries into a head, oldest first. For one use by one thread. */
final class Fold {

  private final Rules rules;
  private final String encounter;
  private final Facts facts;
  private final List<Head> checkpoints = new ArrayList<>();
  private Head head;

  Fold(Rules rules, String encounter, Facts facts, Head start) {
    this.rules = rules;
    this.encounter = encounter;
    this.facts = facts;
    this.head = start;
  }

  /** Takes in an entry; returns what is to be said of it, not yet stamped for sending. */
  Snapshot next(Entry entry) {
    if (entry.retracted()) {
      return withdrawn(entry);
    }
    var step = rules.at(entry.moment().takenAt()).step(encounter, head, entry, facts);
    head = step.head();
    if (head.sets() % Timeline.CHECKPOINT_EVERY == 0) {
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

  @Nullable Moment at() {
    return head.at();
  }
}
