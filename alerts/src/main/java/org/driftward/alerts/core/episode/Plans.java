package org.driftward.alerts.core.episode;

import java.time.Duration;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CarePlanDesk.RefusedException;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.PlanRequest;
import org.driftward.alerts.core.episode.Move.To;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.policy.PlanRules;
import org.driftward.alerts.core.trigger.Limits;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.jspecify.annotations.Nullable;

/** Signs care plans within what local policy allows, and lets their holds begin and end. */
final class Plans {

  private final PlanRules rules;
  private final Alarms alarms;
  private final Turns turns;

  Plans(EscalationPolicy policy, Alarms alarms) {
    this.rules = policy.plans();
    this.alarms = alarms;
    this.turns = new Turns(policy.ladder());
  }

  /** What is asked for, as a plan that can be signed. */
  CarePlan draft(Course course, PlanRequest request, Actor actor, Instant now) {
    return new PlanDraft(rules, course.plan(), actor.account(), now).of(request);
  }

  Decision sign(Course course, CarePlan asked, Actor actor, Instant now) {
    check(asked, actor, now);
    long version = course.plan() == null ? 1 : course.plan().version() + 1;
    var plan =
        asked
            .withLimits(replacing(course.plan(), asked.limits(), now))
            .signed(version, actor.account());
    var next = course.withPlan(plan, plan.holdsOnlyForAWhile());
    var signed = new Decision(next, List.of(new Happening.PlanSigned(plan, actor.account())));
    var held = signed.then(hold(next, course.heldUntil(now), actor, now));
    var before = Limits.of(course.plan(), Map.of(), now);
    return Limits.of(plan, Map.of(), now).include(before)
        ? held
        : held.then(alarms.unlimited(held.course(), now));
  }

  /** The plan ends now and says so; a hold by it is lifted. */
  Decision end(Course course, String reason, Actor actor, Instant now) {
    maySign(actor);
    var plan = course.plan();
    if (plan == null || !plan.inForce(now)) {
      throw new RefusedException("", "no care plan is in force");
    }
    if (reason.isBlank()) {
      throw new RefusedException("reason", "says why");
    }
    var ended =
        PlanDraft.ended(plan, reason, actor.account(), now)
            .signed(plan.version() + 1, actor.account());
    var heldUntil = course.heldUntil(now);
    var next = course.withPlan(ended, false);
    var done =
        new Decision(
            next,
            List.of(
                new Happening.PlanSigned(ended, actor.account()), new Happening.PlanEnded(plan)));
    var lifted = done.then(hold(next, heldUntil, actor, now));
    return lifted.then(alarms.unlimited(lifted.course(), now));
  }

  /** A limit replaces the one of the plan in force, else the standard that it came with. */
  private static List<Limit> replacing(@Nullable CarePlan before, List<Limit> asked, Instant now) {
    if (before == null || !before.inForce(now)) {
      return asked;
    }
    return asked.stream()
        .map(
            limit -> {
              var old = before.limit(limit.code());
              return old == null ? limit : limit.replacing(old.low(), old.high());
            })
        .toList();
  }

  private void maySign(Actor actor) {
    if (Collections.disjoint(actor.roles(), rules.signers())) {
      throw new RefusedException("signedBy", "your role may not sign care plans");
    }
  }

  private Decision hold(Course course, @Nullable Instant before, Actor actor, Instant now) {
    var running = course.episode();
    if (running == null) {
      return Decision.silent(course);
    }
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
    maySign(actor);
    if (!plan.limits().isEmpty() && (blank(plan.approvedBy()) || blank(plan.approverRole()))) {
      throw new RefusedException(
          "approvedBy", "and approverRole: altered limits need a senior clinician who agreed");
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

  private static boolean blank(@Nullable String text) {
    return text == null || text.isBlank();
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
