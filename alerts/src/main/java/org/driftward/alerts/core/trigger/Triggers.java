package org.driftward.alerts.core.trigger;

import java.time.Instant;
import java.util.Map;
import org.driftward.alerts.core.policy.TriggerPolicy;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/** Decides what a picture of a patient gives reason to. Immutable, thread-safe. */
public final class Triggers {

  private final TriggerPolicy policy;
  private final Wording wording;
  private final ScoreTriggers scores;
  private final SeriesTriggers series;
  private final UrgentTriggers urgent;

  public Triggers(TriggerPolicy policy, Catalogue catalogue, Wording wording) {
    this.policy = policy;
    this.wording = wording;
    var distance = new Distance(catalogue);
    this.scores = new ScoreTriggers(policy, distance, wording);
    this.series = new SeriesTriggers(policy, catalogue, distance, wording);
    this.urgent = new UrgentTriggers(policy, wording);
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
    urgent.gather(snapshot, gathering);
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
      gathering.firePassing("partial", rule.level(), Map.of(), wording.partial(snapshot, sets));
    }
  }

  /** The same, saying that it was entered long after it was true. */
  public Evaluation late(Evaluation found, Instant asOf) {
    return new Evaluation(
        found.fired().stream().map(trigger -> wording.late(trigger, asOf)).toList(),
        found.suppressed().stream().map(trigger -> wording.late(trigger, asOf)).toList(),
        found.mark());
  }

  /**
   * Nobody has come by: the set due at {@code due} is late by the policy's step.
   *
   * @param lastSet or null if there was none
   */
  public Trigger overdue(TriggerPolicy.OverdueStep step, @Nullable Instant lastSet, Instant due) {
    return new Trigger("overdue", step.level(), Map.of(), wording.overdue(lastSet, due), false);
  }

  /** Somebody at the bedside is worried; a person's worry is for a person to lay to rest. */
  public Trigger worry(String name, String note, Instant now) {
    return new Trigger("worry", policy.worry(), said(now), wording.worry(name, note), true);
  }

  /** A worry that is said again is worse than it was, whatever it is about. */
  static Map<String, Double> said(Instant when) {
    return Map.of("said", (double) when.toEpochMilli());
  }
}
