package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.trigger.Recent;
import org.driftward.scoring.contract.CarePlan;
import org.jspecify.annotations.Nullable;

/**
 * Everything alerts remembers of one encounter.
 *
 * @param cursor sequence of the newest snapshot seen; one at or below it is a repetition
 * @param episodes how many there have been, the running one included
 * @param episode the running one, or null
 * @param quiet or null
 * @param lateness or null while no next set is due
 * @param plan the newest care plan, in force or not, or null
 * @param planRuns whether the plan's end has yet to be told
 * @param watch on what is kept quiet; courses of before have none
 */
public record Course(
    String encounter,
    Place place,
    long cursor,
    Recent recent,
    int episodes,
    @Nullable Case episode,
    @Nullable Quiet quiet,
    @Nullable Lateness lateness,
    @Nullable CarePlan plan,
    boolean planRuns,
    Watch watch) {

  public Course {
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(recent, "recent");
    watch = watch == null ? Watch.NOTHING : watch;
    if (episode != null && episode.isOver()) {
      throw new IllegalArgumentException("episode " + episode.id() + " is over and kept running");
    }
  }

  public static Course begin(String encounter) {
    return new Course(
        encounter,
        Place.UNASSIGNED,
        0,
        Recent.NOTHING,
        0,
        null,
        null,
        null,
        null,
        false,
        Watch.NOTHING);
  }

  /** The clocks that run, each with its end. */
  public Map<DeadlineKind, Instant> deadlines(EscalationPolicy policy) {
    var running = new EnumMap<DeadlineKind, Instant>(DeadlineKind.class);
    if (episode != null && episode.standing().due() != null) {
      running.put(DeadlineKind.EPISODE, episode.standing().due());
    }
    var late = lateness == null ? null : lateness.next(policy.triggers().overdue());
    if (late != null && place.present()) {
      running.put(DeadlineKind.OVERDUE, late);
    }
    if (plan != null && planRuns) {
      running.put(DeadlineKind.CARE_PLAN, plan.until());
    }
    return running;
  }

  /** When the care plan's hold ends, if one is in force at {@code now}; else null. */
  @Nullable Instant heldUntil(Instant now) {
    if (plan == null || plan.hold() == null || !plan.inForce(now)) {
      return null;
    }
    var until = plan.hold().until();
    var end = until.isBefore(plan.until()) ? until : plan.until();
    return end.isAfter(now) ? end : null;
  }

  Course withCursor(long sequence) {
    return new Course(
        encounter, place, sequence, recent, episodes, episode, quiet, lateness, plan, planRuns,
        watch);
  }

  Course withPlace(Place other) {
    return new Course(
        encounter, other, cursor, recent, episodes, episode, quiet, lateness, plan, planRuns,
        watch);
  }

  Course withPicture(Recent newest, @Nullable Lateness next, Judgement judged) {
    return new Course(
        encounter,
        place,
        cursor,
        newest,
        episodes,
        episode,
        quiet,
        next,
        plan,
        planRuns,
        watch.over(judged));
  }

  /** The newest picture was a mistake: so was whatever somebody closed over it. */
  Course withoutPicture(@Nullable Lateness next) {
    return new Course(
        encounter,
        place,
        cursor,
        recent,
        episodes,
        episode,
        null,
        next,
        plan,
        planRuns,
        watch.over(null));
  }

  Course withRecent(Recent other) {
    return new Course(
        encounter, place, cursor, other, episodes, episode, quiet, lateness, plan, planRuns, watch);
  }

  Course withWatch(Watch other) {
    return new Course(
        encounter, place, cursor, recent, episodes, episode, quiet, lateness, plan, planRuns,
        other);
  }

  Course withLateness(@Nullable Lateness next) {
    return new Course(
        encounter, place, cursor, recent, episodes, episode, quiet, next, plan, planRuns, watch);
  }

  /** A plan is signed over what the newest picture shows. */
  Course withPlan(CarePlan signed, boolean runs) {
    return new Course(
        encounter,
        place,
        cursor,
        recent,
        episodes,
        episode,
        quiet,
        lateness,
        signed,
        runs,
        watch.signedOver());
  }

  Course withPlanTold() {
    return new Course(
        encounter, place, cursor, recent, episodes, episode, quiet, lateness, plan, false, watch);
  }

  Course withQuiet(@Nullable Quiet other) {
    return new Course(
        encounter, place, cursor, recent, episodes, episode, other, lateness, plan, planRuns,
        watch);
  }

  Course opened(Case opened) {
    return new Course(
        encounter,
        place,
        cursor,
        recent,
        episodes + 1,
        opened,
        null,
        lateness,
        plan,
        planRuns,
        watch);
  }

  /** The running episode went over to another encounter. */
  Course withoutEpisode() {
    return new Course(
        encounter, place, cursor, recent, episodes, null, quiet, lateness, plan, planRuns, watch);
  }

  /** An episode that is over is kept in its own record, not here. */
  Course withEpisode(Case changed) {
    return new Course(
        encounter,
        place,
        cursor,
        recent,
        episodes,
        changed.isOver() ? null : changed,
        quiet,
        lateness,
        plan,
        planRuns,
        watch);
  }

  String nextEpisode() {
    return "E-" + encounter + "-" + (episodes + 1);
  }
}
