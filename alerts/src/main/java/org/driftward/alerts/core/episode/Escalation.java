package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CarePlanDesk.RefusedException;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.PlanRequest;
import org.driftward.alerts.core.episode.Verdict.NoLongerApplies;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.shift.Roster;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;

/**
 * Turns pictures, people and clocks into responsibility: from the course of an encounter and an
 * event to the course after it and what the journal must keep. Pure; immutable, thread-safe.
 *
 * <p>Every method may be asked the same twice: what was decided before decides nothing again.
 */
public final class Escalation {

  private final EscalationPolicy policy;
  private final Triggers triggers;
  private final Alarms alarms;
  private final Pictures pictures;
  private final Clocks clocks;
  private final Actions actions;
  private final Plans plans;
  private final Turns turns;
  private final Leaving leaving;
  private final Merging merging;
  private final Stays stays;

  public Escalation(EscalationPolicy policy, Triggers triggers) {
    this.policy = policy;
    this.triggers = triggers;
    this.alarms = new Alarms(policy);
    this.pictures = new Pictures(policy, triggers, alarms);
    this.clocks = new Clocks(policy, triggers, alarms);
    this.actions = new Actions(policy);
    this.plans = new Plans(policy, alarms);
    this.turns = new Turns(policy.ladder());
    this.leaving = new Leaving(turns);
    this.merging = new Merging(turns, alarms, leaving);
    this.stays = new Stays(alarms, policy.triggers().firstSet());
  }

  public EscalationPolicy policy() {
    return policy;
  }

  /** Scoring sent a picture of the patient. Only the newest clinical picture raises or lowers. */
  public Decision picture(Course course, Snapshot snapshot, Instant now) {
    return pictures.decide(course, snapshot, now);
  }

  /** A clock may have run out. */
  public Decision ranOut(Course course, DeadlineKind kind, Instant now) {
    return clocks.ranOut(course, kind, now);
  }

  /**
   * The present alarm of an episode cannot reach somebody who should have been told. The caller
   * knows that no newer alarm went out.
   *
   * @param why in words, for the journal
   */
  public Decision unreached(Course course, String episode, String why, Instant now) {
    return clocks.unreached(course, episode, why, now);
  }

  /** The patient was admitted, moved, discharged or merged into another encounter. */
  public Decision moved(Course course, Encounter encounter, Instant now) {
    if (encounter.version() <= course.place().version()) {
      return Decision.silent(course);
    }
    var place = Place.of(encounter);
    var next = stays.at(course, place, now);
    var running = next.episode();
    if (running == null) {
      return place.present() && !course.place().present()
          ? stays.takenBack(next, now)
          : Decision.silent(next);
    }
    if (!place.present()) {
      var because = whyGone(encounter);
      return turns.changed(
          stays.left(next, running),
          running,
          running.closed(now, because),
          "closed",
          Happening.SERVICE,
          null,
          because);
    }
    if (!place.ward().equals(course.place().ward())) {
      var from = course.place().version() == 0 ? null : "from ward " + course.place().ward();
      return leaving.transferred(next, running, from, turns.of(running, null, now));
    }
    return place.sameBedAs(course.place())
        ? Decision.silent(next)
        : turns.changed(next, running, running, "moved", Happening.SERVICE, null, null);
  }

  private static String whyGone(Encounter encounter) {
    if (encounter.mergedInto() != null) {
      return "merged into " + encounter.mergedInto();
    }
    return encounter.cancelled() == null ? "discharged" : "admission called off";
  }

  /**
   * Two encounters became one: what runs in the one given up goes on in the surviving one.
   *
   * @param encounter the one given up, as it is now
   */
  public List<Decision> merged(Course givenUp, Course survivor, Encounter encounter, Instant now) {
    boolean news = encounter.version() > givenUp.place().version();
    var running = givenUp.episode();
    if (!news || running == null) {
      return List.of(moved(givenUp, encounter, now));
    }
    if (!survivor.place().present()) {
      return List.of(
          moved(givenUp, encounter, now), Decision.silent(merging.left(survivor, running)));
    }
    return survivor.episode() == null
        ? List.of(
            Decision.silent(givenUp.withPlace(Place.of(encounter)).withoutEpisode()),
            merging.inherited(survivor, running, givenUp, now))
        : List.of(
            moved(givenUp, encounter, now),
            merging.joined(survivor, survivor.episode(), running, givenUp.encounter(), now));
  }

  /** A person acts on an episode of this encounter. */
  public Verdict act(Course course, Request request, Actor actor, Instant now) {
    var running = course.episode();
    return running == null || !running.id().equals(request.episode())
        ? new NoLongerApplies("the episode is over")
        : actions.act(course, running, request, actor, now);
  }

  /**
   * An episode never rests with somebody who has gone off duty: it passes to whoever answers for
   * the bed now, and if nobody does, the clock runs again.
   */
  public Decision staffed(Course course, Roster roster, Instant now) {
    var running = course.episode();
    var owner = running == null ? null : running.standing().owner();
    return running == null || owner == null || !roster.off(owner.account())
        ? Decision.silent(course)
        : leaving.ownerGone(
            course,
            running,
            roster,
            "the duty of " + owner.name() + " has ended",
            turns.of(running, null, now));
  }

  /**
   * The owner may no longer answer for this patient: the account is gone, has lost the role, or
   * does not see the ward where the patient is.
   *
   * @param account of whom that was found; nothing is decided of anybody else
   * @param why in words that follow the owner's name, for the journal
   */
  public Decision disowned(Course course, String account, String why, Roster roster, Instant now) {
    var running = course.episode();
    var owner = running == null ? null : running.standing().owner();
    return running == null || owner == null || !owner.account().equals(account)
        ? Decision.silent(course)
        : leaving.ownerGone(
            course, running, roster, owner.name() + " " + why, turns.of(running, null, now));
  }

  /** Somebody at the bedside is worried: a reason to escalate by itself, and always news. */
  public Decision worry(Course course, String note, Actor actor, Instant now) {
    var trigger = triggers.worry(actor.name(), note, now);
    var running = course.episode();
    return running == null
        ? alarms.open(course.withQuiet(null), trigger, actor.account(), now)
        : alarms.join(course, running, trigger, actor.account(), note, now);
  }

  /**
   * What is asked for as a care plan: with what stands already, within local policy.
   *
   * @throws RefusedException naming the field that local policy does not allow
   */
  public CarePlan draft(Course course, PlanRequest request, Actor actor, Instant now) {
    return plans.draft(course, request, actor, now);
  }

  /**
   * A care plan is signed: {@code plan} becomes the encounter's next version.
   *
   * @throws RefusedException naming the field that local policy does not allow
   */
  public Decision planned(Course course, CarePlan plan, Actor actor, Instant now) {
    return plans.sign(course, plan, actor, now);
  }

  /**
   * The care plan in force ends now.
   *
   * @throws RefusedException if none is, or naming the field that local policy does not allow
   */
  public Decision planEnded(Course course, String reason, Actor actor, Instant now) {
    return plans.end(course, reason, actor, now);
  }
}
