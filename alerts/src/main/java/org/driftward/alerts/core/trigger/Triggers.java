package org.driftward.alerts.core.trigger;

import java.time.Instant;
import org.driftward.alerts.core.policy.TriggerPolicy;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.Snapshot;

/** Decides what a picture of a patient gives reason to. Immutable, thread-safe. */
public final class Triggers {

  private final TriggerPolicy policy;
  private final Wording wording;
  private final ScoreTriggers scores;
  private final SeriesTriggers series;

  public Triggers(TriggerPolicy policy, Catalogue catalogue, Wording wording) {
    this.policy = policy;
    this.wording = wording;
    this.scores = new ScoreTriggers(policy, wording);
    this.series = new SeriesTriggers(policy, catalogue, wording);
  }

  /** The clinical time by which a picture's set is told from others. */
  public static Instant setOf(Snapshot snapshot) {
    return snapshot.lastSet() == null ? snapshot.asOf() : snapshot.lastSet();
  }

  /**
   * @param earlier what is remembered of the sets before this one
   */
  public Evaluation evaluate(Snapshot snapshot, Recent earlier, Limits limits) {
    var gathering = new Gathering();
    scores.gather(snapshot, limits, gathering);
    series.gather(snapshot, earlier, limits, gathering);
    partial(snapshot, earlier, gathering);
    return gathering.evaluation(setOf(snapshot), !snapshot.partial().isEmpty());
  }

  private void partial(Snapshot snapshot, Recent earlier, Gathering gathering) {
    var rule = policy.partial();
    if (rule == null || snapshot.partial().isEmpty()) {
      return;
    }
    int sets = 1 + earlier.partial();
    if (sets >= rule.sets()) {
      gathering.firePassing("partial", rule.level(), wording.partial(snapshot, sets));
    }
  }

  /** Nobody has come by: the set due at {@code due} is late by the policy's step. */
  public Trigger overdue(TriggerPolicy.OverdueStep step, Instant lastSet, Instant due) {
    return new Trigger("overdue", step.level(), wording.overdue(lastSet, due), false);
  }

  /** Somebody at the bedside is worried; a person's worry is for a person to lay to rest. */
  public Trigger worry(String name, String note) {
    return new Trigger("worry", policy.worry(), wording.worry(name, note), true);
  }
}
