package org.driftward.alerts.contract;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import org.driftward.scoring.contract.CarePlan.Hold;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.jspecify.annotations.Nullable;

/**
 * What somebody asks to sign for one encounter. Limits, interval, hold and new baseline replace
 * those of the plan before as a whole; a standing fact that is left out stays as it stands.
 *
 * @param temporary settings that end with the plan
 * @param standing facts that do not
 * @param from now unless given
 * @param until required where something ends with the plan
 */
public record PlanRequest(
    String encounter,
    Temporary temporary,
    Standing standing,
    String reason,
    @Nullable Instant from,
    @Nullable Instant until,
    @Nullable String approvedBy,
    @Nullable String approverRole) {

  /** See {@link org.driftward.scoring.contract.CarePlan}. */
  public record Temporary(
      List<Limit> limits,
      @Nullable Duration interval,
      @Nullable Hold hold,
      @Nullable Instant newBaseline) {
    public Temporary {
      limits = List.copyOf(limits);
    }

    boolean isEmpty() {
      return limits.isEmpty() && interval == null && hold == null;
    }
  }

  /**
   * Each null where it stays as it stands. Scale 1, no populations and an empty word take a fact
   * back.
   *
   * @param reviewBy when the facts signed now are to be looked at again; null for the policy's time
   * @param again whether a value that stands already is signed anew: its review is done
   */
  public record Standing(
      @Nullable Integer oxygenScale,
      @Nullable List<String> populations,
      @Nullable String usualConsciousness,
      @Nullable String ceiling,
      @Nullable Instant reviewBy,
      boolean again) {

    public static final Standing AS_IT_IS = new Standing(null, null, null, null, null, false);

    /** Whether it leaves every fact as it stands. */
    public boolean isEmpty() {
      return oxygenScale == null
          && populations == null
          && usualConsciousness == null
          && ceiling == null;
    }
  }

  public PlanRequest {
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(temporary, "temporary");
    Objects.requireNonNull(standing, "standing");
    Objects.requireNonNull(reason, "reason");
  }

  /** Whether nothing that is asked for ends by itself. */
  public boolean standsOnly() {
    return temporary.isEmpty();
  }

  /** Names neither the patient nor the settings. */
  @Override
  public String toString() {
    return "PlanRequest[" + encounter + "]";
  }
}
