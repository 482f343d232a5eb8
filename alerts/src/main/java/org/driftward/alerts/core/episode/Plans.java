package org.driftward.alerts.core.episode;

import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CarePlanDesk.RefusedException;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Move.To;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.policy.PlanRules;
import org.driftward.scoring.contract.CarePlan;
import org.jspecify.annotations.Nullable;

/** Signs care plans within what local policy allows, and lets their holds begin and end. */
final class Plans {

  private final PlanRules rules;
  private final Turns turns;

  Plans(EscalationPolicy policy) {
    this.rules = policy.plans();
    this.turns = new Turns(policy.ladder());
  }

  Decision sign(Course course, CarePlan asked, Actor actor, Instant now) {
    check(asked, actor, now);
    long version = course.plan() == null ? 1 : course.plan().version() + 1;
    var plan = asked.signed(version, actor.account());
    var next = course.withPlan(plan, true);
    var signed = new Decision(next, List.of(new Happening.PlanSigned(plan, actor.account())));
    var running = next.episode();
    return running == null
        ? signed
        : signed.then(hold(next, running, course.heldUntil(now), actor, now));
  }

  private Decision hold(
      Course course, Case running, @Nullable Instant before, Actor actor, Instant now) {
    var until = course.heldUntil(now);
    var standing = running.standing();
    var stage = Stage.of(standing);
    var turn = turns.of(running, Owner.of(actor), now);
    if (until != null) {
      return moved(course, running, stage.hold(standing, turn, until), actor, "the care plan");
    }
    boolean lifted = before != null && running.state() == EpisodeState.HELD;
    return lifted
        ? moved(course, running.alarmedAt(now), stage.clockRanOut(standing, turn), actor, "lifted")
        : Decision.silent(course);
  }

  private Decision moved(Course course, Case running, Move move, Actor actor, String reason) {
    if (move instanceof To to) {
      return turns.changed(
          course,
          running,
          running.movedTo(to.standing()),
          to.kind(),
          actor.account(),
          null,
          reason);
    }
    return Decision.silent(course);
  }

  private void check(CarePlan plan, Actor actor, Instant now) {
    if (Collections.disjoint(actor.roles(), rules.signers())) {
      throw new RefusedException("signedBy", "your role may not sign care plans");
    }
    if (plan.reason().isBlank()) {
      throw new RefusedException("reason", "says why");
    }
    if (plan.from().isAfter(now)) {
      throw new RefusedException("from", "a plan is in force from when it is signed");
    }
    if (!plan.until().isAfter(now)) {
      throw new RefusedException("until", "is a time in the future");
    }
    if (plan.until().isAfter(now.plus(rules.longest()))) {
      throw new RefusedException(
          "until", "is at most " + rules.longest() + " away by local policy");
    }
    if (plan.newBaseline() != null && plan.newBaseline().isAfter(now)) {
      throw new RefusedException("newBaseline", "is a time that has come");
    }
    checkInterval(plan.interval());
    if (plan.hold() != null && !plan.hold().until().isAfter(now)) {
      throw new RefusedException("hold", "its end is a time in the future");
    }
  }

  private void checkInterval(@Nullable Duration interval) {
    if (interval != null
        && (interval.compareTo(rules.shortestInterval()) < 0
            || interval.compareTo(rules.longestInterval()) > 0)) {
      throw new RefusedException(
          "interval",
          "is from %s to %s by local policy"
              .formatted(rules.shortestInterval(), rules.longestInterval()));
    }
  }
}
