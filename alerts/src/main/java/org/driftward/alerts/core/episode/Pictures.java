package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.trigger.Limits;
import org.driftward.alerts.core.trigger.Trigger;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.Snapshot;

/** What a new picture of the patient does to the course. */
final class Pictures {

  private final EscalationPolicy policy;
  private final Triggers triggers;
  private final Alarms alarms;
  private final Turns turns;

  Pictures(EscalationPolicy policy, Triggers triggers, Alarms alarms) {
    this.policy = policy;
    this.triggers = triggers;
    this.alarms = alarms;
    this.turns = new Turns(policy.ladder());
  }

  Decision decide(Course before, Snapshot snapshot, Instant now) {
    if (snapshot.sequence() <= before.cursor()) {
      return Decision.silent(before);
    }
    var course = before.withCursor(snapshot.sequence());
    if (!snapshot.latest() || !course.place().present()) {
      return Decision.silent(course);
    }
    var set = Triggers.setOf(snapshot);
    var earlier = course.recent().before(set);
    var limits = Limits.of(course.plan(), snapshot.asOf());
    var found = triggers.evaluate(snapshot, earlier, limits);
    var quietened = found.suppressed().stream().map(Trigger::rule).collect(Collectors.toSet());
    var next =
        course.withPicture(
            earlier.plus(found.mark()), Lateness.after(course.lateness(), snapshot), quietened);
    var told = suppressed(before.suppressed(), next, found.suppressed());
    var running = next.episode();
    if (running != null) {
      return told.then(follow(next, running, found.fired(), snapshot, isNew(course, set), now));
    }
    boolean backEntry = snapshot.asOf().plus(policy.backEntry()).isBefore(now);
    return backEntry
        ? told.then(Decision.silent(next))
        : told.then(alarms.open(next, found.fired(), snapshot.asOf(), Happening.SERVICE, now));
  }

  private static boolean isNew(Course course, Instant set) {
    var newest = course.recent().newest();
    return newest == null || newest.isBefore(set);
  }

  /** Only what was not kept quiet already is news. */
  private static Decision suppressed(Set<String> before, Course course, List<Trigger> now) {
    var news = new ArrayList<Happening>();
    var plan = course.plan();
    for (var trigger : now) {
      if (!before.contains(trigger.rule()) && plan != null) {
        news.add(
            new Happening.Suppressed(
                course.encounter(), course.place().ward(), trigger, plan.version()));
      }
    }
    return new Decision(course, news);
  }

  private Decision follow(
      Course course,
      Case running,
      List<Trigger> fired,
      Snapshot snapshot,
      boolean newSet,
      Instant now) {
    boolean late = course.lateness() != null && course.lateness().step() > 0;
    var concerns =
        Concerns.after(
            running.concerns(),
            fired,
            course.recent(),
            policy.recovery(),
            snapshot.asOf(),
            rule -> rule.equals("worry") || (rule.equals("overdue") && late));
    if (concerns.isEmpty()) {
      return turns.changed(
          course,
          running,
          running.withConcerns(concerns).closed(now, "recovered"),
          "closed",
          Happening.SERVICE,
          null,
          "recovered");
    }
    var next = running.withConcerns(concerns);
    if (alarms.isAlarm(running, next)) {
      return alarms.sound(course, running, next, Happening.SERVICE, null, now);
    }
    if (newSet && running.state() == EpisodeState.ATTENDED) {
      return reassessed(course, running, next, snapshot, now);
    }
    return settled(course, running, next);
  }

  /** Somebody has seen the patient, and here is how the patient is since. */
  private Decision reassessed(
      Course course, Case running, Case next, Snapshot snapshot, Instant now) {
    var response = policy.ladder().of(next.level());
    boolean quietOver = !now.isBefore(running.standing().since().plus(response.quiet()));
    if (quietOver && next.level() != Level.LOW) {
      return alarms.reopen(course, running, next, "still so after the quiet period", now);
    }
    var leading = snapshot.leading();
    if (leading == null || !leading.complete()) {
      return settled(course, running, next);
    }
    var due = now.plus(response.reassess());
    return turns.changed(
        course,
        running,
        next.movedTo(running.standing().dueBy(due)),
        next.level().compareTo(running.level()) < 0 ? "lowered" : "reassessed",
        Happening.SERVICE,
        null,
        null);
  }

  private Decision settled(Course course, Case running, Case next) {
    if (next.level().compareTo(running.level()) < 0) {
      return turns.changed(course, running, next, "lowered", Happening.SERVICE, null, null);
    }
    if (next.reasons().equals(running.reasons())) {
      return Decision.silent(course.withEpisode(next));
    }
    return turns.changed(course, running, next, "reasons-changed", Happening.SERVICE, null, null);
  }
}
