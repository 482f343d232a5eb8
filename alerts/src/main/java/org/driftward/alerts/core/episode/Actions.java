package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.Collections;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.core.episode.Move.Refused;
import org.driftward.alerts.core.episode.Move.To;
import org.driftward.alerts.core.episode.Verdict.Done;
import org.driftward.alerts.core.episode.Verdict.Incomplete;
import org.driftward.alerts.core.episode.Verdict.NoLongerApplies;
import org.driftward.alerts.core.episode.Verdict.NotAllowed;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.ingest.contract.AccountRole;
import org.jspecify.annotations.Nullable;

/** What a person's action does to the running episode. */
final class Actions {

  /** Longest note or reason, in characters. */
  private static final int LONGEST = 2000;

  private static final Set<String> RESPONDERS =
      Set.of(AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE);

  private final EscalationPolicy policy;
  private final Turns turns;

  Actions(EscalationPolicy policy) {
    this.policy = policy;
    this.turns = new Turns(policy.ladder());
  }

  /**
   * @param running the episode that the request names
   */
  Verdict act(Course course, Case running, Request request, Actor actor, Instant now) {
    if (!mayAct(request.action(), actor)) {
      return new NotAllowed("your role may not " + request.action().word().replace('-', ' '));
    }
    @Nullable Verdict incomplete = incomplete(request, now);
    if (incomplete != null) {
      return incomplete;
    }
    if (request.seenVersion() != null && request.seenVersion() < running.settled()) {
      return new NoLongerApplies("it has changed since you looked");
    }
    var move = move(running, request, actor, now);
    if (move instanceof Refused refused) {
      return new NoLongerApplies(refused.why());
    }
    var to = (To) move;
    var moved =
        request.action() == Action.CLOSE
            ? running.closed(now, String.valueOf(request.reason()))
            : running.movedTo(to.standing());
    var next = request.action() == Action.CLOSE ? course.withQuiet(quiet(running, now)) : course;
    return new Done(
        turns.changed(
            next, running, moved, to.kind(), actor.account(), request.note(), request.reason()));
  }

  private Move move(Case running, Request request, Actor actor, Instant now) {
    var standing = running.standing();
    var stage = Stage.of(standing);
    var turn = turns.of(running, Owner.of(actor), now);
    return switch (request.action()) {
      case ACKNOWLEDGE -> stage.acknowledge(standing, turn);
      case ATTEND -> stage.attend(standing, turn);
      case HAND_OVER -> stage.handOver(standing, receiver(request));
      case HOLD -> stage.hold(standing, turn, until(request));
      case ESCALATE -> stage.escalate(standing, turn);
      case CLOSE -> stage.close(standing, turn);
    };
  }

  private boolean mayAct(Action action, Actor actor) {
    boolean decides = action == Action.HOLD || action == Action.CLOSE;
    return !Collections.disjoint(actor.roles(), decides ? policy.deciders() : RESPONDERS);
  }

  private @Nullable Verdict incomplete(Request request, Instant now) {
    if (tooLong(request.note())) {
      return new Incomplete("note", "longer than " + LONGEST + " characters");
    }
    if (tooLong(request.reason())) {
      return new Incomplete("reason", "longer than " + LONGEST + " characters");
    }
    return switch (request.action()) {
      case ACKNOWLEDGE, ATTEND, ESCALATE -> null;
      case HAND_OVER -> blank(request.to()) ? new Incomplete("to", "names who takes over") : null;
      case CLOSE -> blank(request.reason()) ? new Incomplete("reason", "says why") : null;
      case HOLD -> incompleteHold(request, now);
    };
  }

  private @Nullable Verdict incompleteHold(Request request, Instant now) {
    if (blank(request.reason())) {
      return new Incomplete("reason", "says why");
    }
    var until = request.until();
    if (until == null || !until.isAfter(now)) {
      return new Incomplete("until", "is a time in the future");
    }
    return until.isAfter(now.plus(policy.longestHold()))
        ? new Incomplete("until", "is at most " + policy.longestHold() + " away by local policy")
        : null;
  }

  /** What the person who closes has seen calls nobody again for a while, while it gets no worse. */
  private Quiet quiet(Case running, Instant now) {
    var quiet = policy.ladder().of(running.level()).quiet();
    return new Quiet(now.plus(quiet), Concerns.seen(running.concerns()));
  }

  private static Owner receiver(Request request) {
    var to = String.valueOf(request.to()).strip();
    return new Owner(to, request.toName() == null ? to : request.toName());
  }

  private static Instant until(Request request) {
    if (request.until() == null) {
      throw new IllegalArgumentException("a hold without an end");
    }
    return request.until();
  }

  private static boolean blank(@Nullable String text) {
    return text == null || text.isBlank();
  }

  private static boolean tooLong(@Nullable String text) {
    return text != null && text.length() > LONGEST;
  }
}
