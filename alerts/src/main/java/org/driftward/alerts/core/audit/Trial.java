package org.driftward.alerts.core.audit;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditEvent.Kind;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.PolicyTrial;
import org.driftward.alerts.contract.PolicyTrial.Outcome;
import org.driftward.alerts.contract.PolicyTrial.Raised;
import org.driftward.ingest.contract.Level;

/** Compares what two policies made of the same pictures. */
public final class Trial {

  private Trial() {}

  /**
   * What one policy made of them.
   *
   * @param version of the policy
   * @param changes of every episode it raised
   */
  public record Run(String version, List<EpisodeChange> changes) {
    public Run {
      changes = List.copyOf(changes);
    }
  }

  /**
   * @param until when episodes end that are not over
   */
  public static PolicyTrial compare(
      Run inForce, Run edited, List<AuditEvent> events, double bedDays, Instant until) {
    var before = raised(inForce, until);
    var after = raised(edited, until);
    return new PolicyTrial(
        outcome(inForce, before, bedDays),
        outcome(edited, after, bedDays),
        before.stream().filter(one -> anyMeets(after, one)).toList(),
        before.stream().filter(one -> !anyMeets(after, one)).toList(),
        after.stream().filter(one -> !anyMeets(before, one)).toList(),
        caught(before, events),
        caught(after, events),
        patients(events).size());
  }

  private static Outcome outcome(Run run, List<Raised> raised, double bedDays) {
    return new Outcome(
        run.version(),
        raised.size(),
        count(raised, Level.HIGH),
        count(raised, Level.MEDIUM),
        count(raised, Level.LOW),
        AlarmList.of(run.changes()).size(),
        (int) run.changes().stream().filter(change -> change.kind().equals("escalated")).count(),
        bedDays);
  }

  private static int count(List<Raised> raised, Level level) {
    return (int) raised.stream().filter(one -> one.level() == level).count();
  }

  private static List<Raised> raised(Run run, Instant until) {
    var raised = new ArrayList<Raised>();
    for (var story : AlarmList.byEpisode(run.changes()).values()) {
      var first = story.get(0).episode();
      var last = story.get(story.size() - 1).episode();
      var level =
          story.stream()
              .map(change -> change.episode().level())
              .max(Comparator.naturalOrder())
              .orElseThrow();
      raised.add(
          new Raised(
              first.encounter(),
              first.ward(),
              story.get(0).at(),
              last.closedAt() == null ? until : last.closedAt(),
              level,
              first.reasons().isEmpty() ? "" : first.reasons().get(0).words()));
    }
    raised.sort(Comparator.comparing(Raised::openedAt).thenComparing(Raised::encounter));
    return raised;
  }

  /** The same patient at the same time. */
  private static boolean anyMeets(List<Raised> all, Raised one) {
    return all.stream()
        .anyMatch(
            other ->
                other.encounter().equals(one.encounter())
                    && !other.openedAt().isAfter(one.until())
                    && !one.openedAt().isAfter(other.until()));
  }

  /** What an alarm should have come before; an intervention is an answer to one. */
  private static List<AuditEvent> patients(List<AuditEvent> events) {
    return events.stream()
        .filter(event -> event.encounter() != null && event.kind() != Kind.INTERVENTION)
        .toList();
  }

  private static int caught(List<Raised> raised, List<AuditEvent> events) {
    return (int)
        patients(events).stream()
            .filter(
                event ->
                    raised.stream()
                        .anyMatch(
                            one ->
                                one.encounter().equals(event.encounter())
                                    && one.level() != Level.LOW
                                    && !one.openedAt().isAfter(event.at())
                                    && !one.until().isBefore(event.at().minus(View.BEFORE))))
            .count();
  }
}
