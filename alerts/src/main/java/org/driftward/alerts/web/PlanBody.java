package org.driftward.alerts.web;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Hold;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.jspecify.annotations.Nullable;

/**
 * A care plan as it is asked for. Version and signer are not the sender's to say.
 *
 * @param oxygenScale 1 unless given
 * @param populations none unless given, for example {@code pregnant}
 * @param newBaseline when the patient's usual values became new ones, as after surgery; or null
 * @param from now unless given
 * @param until required
 * @param reason required
 * @param approvedBy the senior clinician who agreed; required with altered limits
 * @param approverRole of that clinician
 */
public record PlanBody(
    @Nullable Integer oxygenScale,
    @Nullable List<Limit> limits,
    @Nullable Duration interval,
    @Nullable String ceiling,
    @Nullable Hold hold,
    @Nullable List<String> populations,
    @Nullable Instant newBaseline,
    @Nullable String reason,
    @Nullable Instant from,
    @Nullable Instant until,
    @Nullable String approvedBy,
    @Nullable String approverRole) {

  /**
   * @throws IllegalArgumentException in words, if the plan contradicts itself
   */
  CarePlan plan(String encounter, String account, Instant now) {
    if (until == null) {
      throw Problems.refused("until", "is required: every plan ends");
    }
    return new CarePlan(
        encounter,
        1,
        oxygenScale == null ? 1 : oxygenScale,
        limits == null ? List.of() : limits,
        interval,
        ceiling,
        hold,
        populations == null ? List.of() : populations,
        newBaseline,
        reason == null ? "" : reason,
        account,
        from == null ? now : from,
        until,
        approvedBy,
        approverRole);
  }
}
