package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.EnumMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
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
 * @param suppressed rules that the altered limits keep quiet now
 * @param plan the newest care plan, in force or not, or null
 * @param planRuns whether the plan's end has yet to be told
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
    Set<String> suppressed,
    @Nullable CarePlan plan,
    boolean planRuns) {

  public Course {
    Objects.requireNonNull(encounter, "encounter");
    Objects.requireNonNull(place, "place");
    Objects.requireNonNull(recent, "recent");
    suppressed = Set.copyOf(suppressed);
    if (episode != null && episode.isOver()) {
      throw new IllegalArgumentException("episode " + episode.id() + " is over and kept running");
    }
  }

  public static Course begin(String encounter) {
    return new Course(
        encounter, Place.UNASSIGNED, 0, Recent.NOTHING, 0, null, null, null, Set.of(), null, false);
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
        encounter,
        place,
        sequence,
        recent,
        episodes,
        episode,
        quiet,
        lateness,
        suppressed,
        plan,
        planRuns);
  }

  Course withPlace(Place other) {
    return new Course(
        encounter,
        other,
        cursor,
        recent,
        episodes,
        episode,
        quiet,
        lateness,
        suppressed,
        plan,
        planRuns);
  }

  Course withPicture(Recent newest, @Nullable Lateness watch, Set<String> kept) {
    return new Course(
        encounter, place, cursor, newest, episodes, episode, quiet, watch, kept, plan, planRuns);
  }

  Course withLateness(Lateness watch) {
    return new Course(
        encounter,
        place,
        cursor,
        recent,
        episodes,
        episode,
        quiet,
        watch,
        suppressed,
        plan,
        planRuns);
  }

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
        suppressed,
        signed,
        runs);
  }

  Course withQuiet(@Nullable Quiet other) {
    return new Course(
        encounter,
        place,
        cursor,
        recent,
        episodes,
        episode,
        other,
        lateness,
        suppressed,
        plan,
        planRuns);
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
        suppressed,
        plan,
        planRuns);
  }

  /** The running episode went over to another encounter. */
  Course withoutEpisode() {
    return new Course(
        encounter,
        place,
        cursor,
        recent,
        episodes,
        null,
        quiet,
        lateness,
        suppressed,
        plan,
        planRuns);
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
        suppressed,
        plan,
        planRuns);
  }

  String nextEpisode() {
    return "E-" + encounter + "-" + (episodes + 1);
  }
}
