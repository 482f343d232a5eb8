package org.driftward.dashboard.core;

import java.time.Instant;
import java.time.LocalDate;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient.Sex;
import org.driftward.scoring.contract.StandingFact.Fact;
import org.jspecify.annotations.Nullable;

/**
 * One patient on a board.
 *
 * @param score the leading score, or null before the first set or where no score applies
 * @param level of the running episode, or null without one
 * @param concern why the card stands where it does
 * @param reasons what holds the episode open, gravest first; without an episode, what has changed
 * @param lastSet clinical time of the newest set of vital signs, or null before the first
 * @param nextDue when the next set is due, or null before the first
 * @param overdue whether {@code nextDue} has passed at the board's time
 * @param episode the running one, or null
 * @param ceiling the agreed ceiling of care now in force, or null
 * @param oxygenScale 1, or 2 where a clinician has prescribed it
 * @param hold whether a hold of escalation is in force
 * @param reviewsDue standing facts that somebody has to look at again
 * @param present how the present alarm of the episode reaches whom beyond the board
 * @param recentTotals of the leading score, oldest first, at most twelve
 */
public record Card(
    String encounter,
    String ward,
    @Nullable String bed,
    String patientId,
    @Nullable String name,
    @Nullable LocalDate birthDate,
    @Nullable Sex sex,
    @Nullable ScoreLine score,
    @Nullable Level level,
    Concern concern,
    Movement movement,
    List<String> reasons,
    @Nullable Instant lastSet,
    @Nullable Instant nextDue,
    boolean overdue,
    @Nullable Episode episode,
    List<Delivery> present,
    @Nullable String ceiling,
    int oxygenScale,
    boolean hold,
    List<Fact> reviewsDue,
    List<Total> recentTotals) {
  public Card {
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(ward, "ward");
    Objects.requireNonNull(concern, "concern");
    Objects.requireNonNull(movement, "movement");
    reasons = List.copyOf(reasons);
    reviewsDue = List.copyOf(reviewsDue);
    present = List.copyOf(present);
    recentTotals = List.copyOf(recentTotals);
  }

  /** Whether a running episode waits for its first answer. */
  public boolean unanswered() {
    return episode != null && episode.state() == EpisodeState.OPEN;
  }

  /** Which card it is, never what it says about the patient. */
  @Override
  public String toString() {
    return "Card[" + encounter + "]";
  }
}
