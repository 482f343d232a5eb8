package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Move.Refused;
import org.driftward.alerts.core.episode.Move.To;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.trigger.Triggers;

/**
 * What happens when a clock runs out. Each asks the course whether it really has, so a deadline
 * that is delivered twice, or after somebody was faster, does nothing.
 */
final class Clocks {

  private final EscalationPolicy policy;
  private final Triggers triggers;
  private final Alarms alarms;
  private final Turns turns;

  Clocks(EscalationPolicy policy, Triggers triggers, Alarms alarms) {
    this.policy = policy;
    this.triggers = triggers;
    this.alarms = alarms;
    this.turns = new Turns(policy.ladder());
  }

  Decision ranOut(Course course, DeadlineKind kind, Instant now) {
    var due = course.deadlines(policy).get(kind);
    if (due == null || due.isAfter(now)) {
      return Decision.silent(course);
    }
    return switch (kind) {
      case EPISODE -> episode(course, now);
      case OVERDUE -> overdue(course, now);
      case CARE_PLAN -> carePlan(course, now);
    };
  }

  private Decision episode(Course course, Instant now) {
    var running = course.episode();
    if (running == null) {
      return Decision.silent(course);
    }
    var standing = running.standing();
    var move = Stage.of(standing).clockRanOut(standing, turns.of(running, null, now));
    if (move instanceof Refused refused) {
      throw new IllegalStateException("a clock ran out where none runs: " + refused.why());
    }
    var to = (To) move;
    var moved = running.movedTo(to.standing());
    boolean again =
        standing.state() == EpisodeState.ATTENDED || standing.state() == EpisodeState.HELD;
    return turns.changed(
        course,
        running,
        again ? moved.alarmedAt(now) : moved,
        to.kind(),
        Happening.SERVICE,
        null,
        why(standing.state()));
  }

  /**
   * Somebody who should have been told cannot be: the next rung is told at once. On the last rung
   * there is nobody else, and the clock goes on.
   */
  Decision unreached(Course course, String episode, String why, Instant now) {
    var running = course.episode();
    if (running == null
        || !running.id().equals(episode)
        || running.state() != EpisodeState.OPEN
        || policy.ladder().of(running.level()).isLast(running.standing().rung())) {
      return Decision.silent(course);
    }
    var standing = running.standing();
    var to = (To) Stage.OPEN.clockRanOut(standing, turns.of(running, null, now));
    return turns.changed(
        course, running, running.movedTo(to.standing()), to.kind(), Happening.SERVICE, null, why);
  }

  private static String why(EpisodeState state) {
    return switch (state) {
      case OPEN -> "nobody has answered in time";
      case ACKNOWLEDGED -> "nobody has come to the bedside in time";
      case ATTENDED -> "no complete set since somebody was at the bedside";
      case HELD -> "the hold is over";
      case CLOSED -> throw new IllegalStateException("a clock ran out for an episode that is over");
    };
  }

  private Decision overdue(Course course, Instant now) {
    var late = course.lateness();
    if (late == null) {
      return Decision.silent(course);
    }
    var trigger =
        triggers.overdue(late.reached(policy.triggers().overdue()), late.lastSet(), late.due());
    var next = course.withLateness(late.oneStepOn());
    var running = next.episode();
    var judged = next.watch().newest();
    // A set that is late is news, whatever somebody has seen of the patient before.
    if (running != null) {
      return alarms.join(next, running, trigger, Happening.SERVICE, null, now);
    }
    var concerns = Concerns.of(List.of(trigger), now, null);
    return alarms.open(
        next.withQuiet(null),
        judged != null && judged.untold()
            ? Concerns.with(concerns, Alarms.concerns(judged))
            : concerns,
        now,
        Happening.SERVICE,
        now);
  }

  /** What the plan's limits kept quiet is judged again without them. */
  private Decision carePlan(Course course, Instant now) {
    var plan = course.plan();
    if (plan == null) {
      return Decision.silent(course);
    }
    var ended = new Decision(course.withPlanTold(), List.of(new Happening.PlanEnded(plan)));
    return ended.then(alarms.unlimited(ended.course(), now));
  }
}
