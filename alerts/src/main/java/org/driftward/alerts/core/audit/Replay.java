package org.driftward.alerts.core.audit;

import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.episode.DeadlineKind;
import org.driftward.alerts.core.episode.Decision;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.episode.Verdict;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Patient;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;

/**
 * Lets a policy live through recorded pictures again, by the same code that lives through new ones.
 * Every picture comes when it was taken; the clocks run between; people always behave alike: they
 * come to the bedside a share of the level's time to attend after an alarm. Used for one encounter,
 * by one thread.
 */
public final class Replay {

  private static final Actor SOMEBODY =
      new Actor("replay", "somebody", Set.of(AccountRole.RESPONSE));

  private final Escalation escalation;
  private final double share;
  private final List<EpisodeChange> changes = new ArrayList<>();
  private Course course;
  private @Nullable Instant comes;
  private long pictures;
  private long moves;

  /**
   * @param share of the level's time to attend after which somebody comes, above 0
   */
  public Replay(Escalation escalation, String encounter, double share) {
    if (!(share > 0)) {
      throw new IllegalArgumentException("people come after " + share + " of the time");
    }
    this.escalation = escalation;
    this.share = share;
    this.course = Course.begin(encounter);
  }

  /**
   * @param stays of the encounter
   * @param plans of the encounter, each in force from when it was signed
   * @param until when the record ends
   * @return every change of every episode, in order
   */
  public List<EpisodeChange> run(
      List<Stay> stays, List<CarePlan> plans, List<Snapshot> snapshots, Instant until) {
    var steps = new ArrayList<Step>();
    for (var stay : stays) {
      steps.add(new Step(stay.from(), () -> move(stay, stay.from(), null)));
      if (stay.separation() && stay.until() != null) {
        steps.add(new Step(stay.until(), () -> move(stay, stay.until(), stay.until())));
      }
    }
    plans.forEach(plan -> steps.add(new Step(plan.from(), () -> sign(plan))));
    snapshots.forEach(snapshot -> steps.add(new Step(snapshot.asOf(), () -> see(snapshot))));
    // Of what happens at one moment the bed comes first, then the plan: the sort is stable.
    steps.sort(Comparator.comparing(Step::at));
    for (var step : steps) {
      if (!step.at().isAfter(until)) {
        clocks(step.at());
        step.work().run();
      }
    }
    clocks(until);
    return List.copyOf(changes);
  }

  private record Step(Instant at, Runnable work) {}

  private void see(Snapshot snapshot) {
    pictures++;
    take(
        escalation.picture(course, snapshot.sent(pictures, true, null), snapshot.asOf()),
        snapshot.asOf());
  }

  private void move(Stay stay, Instant now, @Nullable Instant discharged) {
    moves++;
    var place = new org.driftward.ingest.contract.Stay(stay.ward(), null, stay.from());
    var encounter =
        new Encounter(
            stay.encounter(),
            new Patient(stay.patient(), null, null, null),
            List.of(place),
            stay.from(),
            discharged,
            null,
            moves);
    take(escalation.moved(course, encounter, now), now);
  }

  private void sign(CarePlan plan) {
    var signer = new Actor(plan.signedBy(), plan.signedBy(), escalation.policy().plans().signers());
    if (plan.until().isAfter(plan.from().plus(escalation.policy().plans().longest()))) {
      return;
    }
    take(escalation.planned(course, plan, signer, plan.from()), plan.from());
  }

  /** Everything that is due before a moment, in the order of time. */
  private void clocks(Instant until) {
    while (true) {
      var clock =
          course.deadlines(escalation.policy()).entrySet().stream()
              .min(Map.Entry.comparingByValue())
              .orElse(null);
      boolean personFirst = comes != null && (clock == null || !comes.isAfter(clock.getValue()));
      var next = personFirst ? comes : clock == null ? null : clock.getValue();
      if (next == null || next.isAfter(until)) {
        return;
      }
      if (personFirst) {
        come(next);
      } else {
        ranOut(clock.getKey(), next);
      }
    }
  }

  private void ranOut(DeadlineKind kind, Instant now) {
    take(escalation.ranOut(course, kind, now), now);
  }

  private void come(Instant now) {
    comes = null;
    var running = course.episode();
    if (running == null) {
      return;
    }
    var request = new Request(running.id(), Action.ATTEND, null, null, null, null, null);
    if (escalation.act(course, request, SOMEBODY, now) instanceof Verdict.Done done) {
      take(done.decision(), now);
    }
  }

  private void take(Decision decision, Instant now) {
    course = decision.course();
    for (var happening : decision.happenings()) {
      if (happening instanceof EpisodeChanged changed) {
        changes.add(
            new EpisodeChange(
                changes.size() + 1L,
                now,
                changed.kind(),
                changed.by(),
                changed.note(),
                changed.reason(),
                changed.episode()));
      }
    }
    expect(now);
  }

  private void expect(Instant now) {
    var running = course.episode();
    if (running == null || running.standing().state() != EpisodeState.OPEN) {
      comes = null;
    } else if (comes == null) {
      var attend = escalation.policy().ladder().of(running.level()).attend();
      comes = now.plus(Duration.ofMillis((long) (attend.toMillis() * share)));
    }
  }
}
