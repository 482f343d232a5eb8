package org.driftward.dashboard.core;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.Reason;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.StandingFact;
import org.driftward.scoring.contract.StandingFacts;
import org.jspecify.annotations.Nullable;

/**
 * Makes a card from what is known of a patient.
 *
 * @param highScore from this possible total of the leading score on, an overdue set is urgent
 */
public record Cards(BigDecimal highScore) {

  public Cards {
    Objects.requireNonNull(highScore, "highScore");
  }

  /**
   * What is known of one patient.
   *
   * @param snapshot the newest clinical picture, or null before the first
   * @param plan the newest care plan, in force or not, or null
   * @param episode the running one, or null
   * @param recentTotals of the leading score, oldest first
   */
  public record Known(
      Encounter encounter,
      @Nullable Snapshot snapshot,
      @Nullable CarePlan plan,
      @Nullable Episode episode,
      List<Total> recentTotals) {
    public Known {
      Objects.requireNonNull(encounter, "encounter");
      recentTotals = List.copyOf(recentTotals);
    }
  }

  /**
   * @param present deliveries of the present alarm of the running episode
   */
  public Card card(Known known, List<Delivery> present, Instant now) {
    var encounter = known.encounter();
    var patient = encounter.patient();
    var snapshot = known.snapshot();
    var episode = known.episode();
    var leading = snapshot == null ? null : snapshot.leading();
    var score = leading == null ? null : ScoreLine.of(leading);
    var movement = Movement.of(snapshot, known.recentTotals());
    boolean overdue = snapshot != null && snapshot.overdue(now);
    var plan = known.plan() != null && known.plan().inForce(now) ? known.plan() : null;
    var facts = StandingFacts.of(known.plan(), now);
    return new Card(
        encounter.id(),
        encounter.ward(),
        encounter.bed(),
        patient.id(),
        patient.name(),
        patient.birthDate(),
        patient.sex(),
        score,
        episode == null ? null : episode.level(),
        Concern.of(score, movement, episode, overdue, highScore, now),
        movement,
        reasons(snapshot, episode),
        snapshot == null ? null : snapshot.lastSet(),
        snapshot == null ? null : snapshot.nextDue(),
        overdue,
        episode,
        present,
        facts.ceiling(),
        facts.oxygenScale(),
        plan != null && plan.hold() != null && now.isBefore(plan.hold().until()),
        known.plan() == null
            ? List.of()
            : known.plan().reviewsDue(now).stream().map(StandingFact::fact).toList(),
        known.recentTotals());
  }

  private static List<String> reasons(@Nullable Snapshot snapshot, @Nullable Episode episode) {
    if (episode != null) {
      return episode.reasons().stream().map(Reason::words).toList();
    }
    return snapshot == null
        ? List.of()
        : snapshot.changed().stream().map(ChangedFinding::words).toList();
  }
}
