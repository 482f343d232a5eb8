package org.driftward.alerts.core.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.Call.Disposition;
import org.driftward.alerts.contract.Call.Moment;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.audit.Call.Report;
import org.driftward.alerts.core.policy.Audience;
import org.jspecify.annotations.Nullable;

/** Reads out of the journal when the response team was told of an episode. */
public final class TeamCalls {

  private TeamCalls() {}

  /**
   * The first time in each episode, with the team's own record of it.
   *
   * @param changes whole episodes, in the order of the journal
   * @param records as far as the team wrote any; one without a change in the journal counts too
   */
  public static List<Call> of(
      List<EpisodeChange> changes, List<org.driftward.alerts.contract.Call> records) {
    Map<String, org.driftward.alerts.contract.Call> written = new LinkedHashMap<>();
    records.forEach(record -> written.put(record.episode(), record));
    var calls = new ArrayList<Call>();
    for (var story : AlarmList.byEpisode(changes).values()) {
      story.stream()
          .filter(change -> change.episode().state() == EpisodeState.OPEN)
          .filter(change -> change.episode().audience().contains(Audience.RESPONSE_TEAM.words()))
          .findFirst()
          .ifPresent(change -> calls.add(told(change, written.remove(change.episode().id()))));
    }
    written.values().forEach(record -> calls.add(written(record)));
    return calls;
  }

  private static Call told(
      EpisodeChange change, org.driftward.alerts.contract.@Nullable Call record) {
    var episode = change.episode();
    return new Call(
        episode.id(),
        episode.encounter(),
        episode.ward(),
        episode.openedAt(),
        change.at(),
        record == null ? null : report(record));
  }

  /** The team came without having been told by the ladder. */
  private static Call written(org.driftward.alerts.contract.Call record) {
    var at =
        record
            .moment(Step.CALLED)
            .or(() -> record.moment(Step.RECEIVED))
            .map(Moment::at)
            .orElse(record.firstTrigger());
    return new Call(
        record.episode(),
        record.encounter(),
        record.ward(),
        record.firstTrigger(),
        at,
        report(record));
  }

  private static Report report(org.driftward.alerts.contract.Call record) {
    var ending = record.ending();
    boolean limited = ending != null && ending.disposition() == Disposition.LIMITATION_AGREED;
    return new Report(
        at(record, Step.CRITICAL_INTERVENTION),
        !record.treatments().isEmpty(),
        limited || (ending != null && ending.disposition() == Disposition.STAYED_WITH_PLAN),
        ending != null && ending.plan() != null && !ending.plan().isBlank(),
        record.caller() == null ? null : record.caller().role().patientSide(),
        record.ceiling() != null,
        limited,
        at(record, Step.AT_BEDSIDE),
        at(record, Step.FINISHED));
  }

  private static @Nullable Instant at(org.driftward.alerts.contract.Call record, Step step) {
    return record.moment(step).map(Moment::at).orElse(null);
  }
}
