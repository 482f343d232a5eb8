package org.driftward.dashboard.core;

import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.contract.StandingFacts;
import org.jspecify.annotations.Nullable;

/**
 * One patient in full.
 *
 * @param asOf ward time of the reading; {@code card} is judged by it
 * @param card the same patient as the board shows them
 * @param carePlan the newest, whether or not it is in force, or null
 * @param snapshot the newest clinical picture, or null before the first
 * @param episode the running one, or null
 * @param story every change of the running episode, or of the last one, oldest first
 */
public record PatientView(
    Instant asOf,
    Card card,
    Encounter encounter,
    @Nullable CarePlan carePlan,
    @Nullable Snapshot snapshot,
    @Nullable Episode episode,
    List<EpisodeChange> story) {
  public PatientView {
    Objects.requireNonNull(asOf, "asOf");
    Objects.requireNonNull(card, "card");
    Objects.requireNonNull(encounter, "encounter");
    story = List.copyOf(story);
  }

  /** The care plan where it is in force, else null: the standard settings. */
  public @Nullable CarePlan carePlanInForce() {
    return carePlan != null && carePlan.inForce(asOf) ? carePlan : null;
  }

  /** The standing facts now, whoever vouches for them. */
  public StandingFacts standing() {
    return StandingFacts.of(carePlan, asOf);
  }

  @Override
  public String toString() {
    return "PatientView[" + encounter.id() + "]";
  }
}
