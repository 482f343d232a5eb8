package org.driftward.alerts.web;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.PlanRequest;
import org.driftward.alerts.contract.PlanRequest.Standing;
import org.driftward.alerts.contract.PlanRequest.Temporary;
import org.driftward.scoring.contract.CarePlan.Hold;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.jspecify.annotations.Nullable;

/**
 * A care plan as it is asked for. Version and signer are not the sender's to say.
 *
 * @param oxygenScale as it stands unless given; 1 takes scale 2 back
 * @param ceiling as it stands unless given; empty takes it back
 * @param populations as they stand unless given, for example {@code pregnant}; an empty list takes
 *     them back
 * @param usualConsciousness as it stands unless given; empty takes it back
 * @param newBaseline when the patient's usual values became new ones, as after surgery; or null
 * @param from now unless given
 * @param until required with limits, interval or hold
 * @param reason required
 * @param approvedBy the senior clinician who agreed; required with altered limits
 * @param approverRole of that clinician
 * @param reviewBy when the standing facts of this request are looked at again, by policy unless
 *     given; a fact that stands already is then signed anew
 */
public record PlanBody(
    @Nullable Integer oxygenScale,
    @Nullable List<Limit> limits,
    @Nullable Duration interval,
    @Nullable String ceiling,
    @Nullable Hold hold,
    @Nullable List<String> populations,
    @Nullable String usualConsciousness,
    @Nullable Instant newBaseline,
    @Nullable String reason,
    @Nullable Instant from,
    @Nullable Instant until,
    @Nullable String approvedBy,
    @Nullable String approverRole,
    @Nullable Instant reviewBy) {

  PlanRequest request(String encounter) {
    return new PlanRequest(
        encounter,
        new Temporary(limits == null ? List.of() : limits, interval, hold, newBaseline),
        new Standing(
            oxygenScale, populations, usualConsciousness, ceiling, reviewBy, reviewBy != null),
        reason == null ? "" : reason,
        from,
        until,
        approvedBy,
        approverRole);
  }
}
