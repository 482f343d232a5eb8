package org.driftward.alerts.contract;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * What the house remembers of patients' stays and observations, for looking back. Alerts keeps only
 * what it needs to decide; whoever keeps the history answers here. Thread-safe, blocking.
 */
public interface CareHistory {

  /**
   * A stretch of an encounter on one ward.
   *
   * @param until exclusive, or null while the patient is there
   * @param admission whether the encounter began with it
   * @param separation whether the encounter ended with it
   */
  record Stay(
      String encounter,
      String patient,
      String ward,
      Instant from,
      @Nullable Instant until,
      boolean admission,
      boolean separation) {
    public Stay {
      Objects.requireNonNull(encounter, "encounter");
      Objects.requireNonNull(ward, "ward");
      Objects.requireNonNull(from, "from");
    }
  }

  /**
   * A set of vital signs and what the leading score made of it.
   *
   * @param score id of it, or null where none applies
   * @param low total, or null where no score applies
   * @param single the most points of one input
   * @param core whether no core observation was lacking
   * @param scored whether the score was complete
   * @param due when the next set was due after this one, or null
   * @param interval between the two, or null
   */
  record ObservedSet(
      String encounter,
      String assessment,
      Instant at,
      @Nullable String score,
      @Nullable BigDecimal low,
      int single,
      boolean core,
      boolean scored,
      @Nullable Instant due,
      @Nullable Duration interval) {
    public ObservedSet {
      Objects.requireNonNull(encounter, "encounter");
      Objects.requireNonNull(at, "at");
    }
  }

  /**
   * Stays that touch the stretch, oldest first.
   *
   * @param wards only there, or null for all
   */
  List<Stay> stays(@Nullable Set<String> wards, Instant from, Instant to);

  /** Sets of these encounters taken in the stretch, oldest first. */
  List<ObservedSet> sets(Set<String> encounters, Instant from, Instant to);

  /** Every picture of one encounter in the stretch, oldest first, withdrawn ones left out. */
  List<Snapshot> snapshots(String encounter, Instant from, Instant to);
}
