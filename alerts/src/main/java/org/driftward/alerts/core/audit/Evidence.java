package org.driftward.alerts.core.audit;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.CareHistory.ObservedSet;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.CarePlan;

/**
 * Everything that measures rest on. It reaches back a day before the stretch that is asked about,
 * for what was so before an event.
 *
 * @param changes whole episodes, in the order of the journal
 * @param sets oldest first
 * @param plans every version of the care plans of these patients
 * @param calls of the response team
 * @param until the present, or the end of the stretch if that is over: what has not happened by
 *     then has not happened
 */
public record Evidence(
    List<EpisodeChange> changes,
    List<Stay> stays,
    List<ObservedSet> sets,
    List<Suppressed> suppressed,
    List<CarePlan> plans,
    List<Call> calls,
    List<AuditEvent> events,
    Instant until) {

  /** A trigger that altered limits kept quiet. */
  public record Suppressed(String encounter, String ward, Instant at, String rule, Level level) {}

  public Evidence {
    changes = List.copyOf(changes);
    stays = List.copyOf(stays);
    sets = List.copyOf(sets);
    suppressed = List.copyOf(suppressed);
    plans = List.copyOf(plans);
    calls = List.copyOf(calls);
    events = List.copyOf(events);
  }
}
