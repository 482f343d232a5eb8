package org.driftward.alerts.core.episode;

import java.math.BigDecimal;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.trigger.Evaluation;
import org.driftward.alerts.core.trigger.Limits;
import org.driftward.alerts.core.trigger.Trigger;
import org.driftward.alerts.core.trigger.Triggers;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.Score;
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
    if (snapshot.withdrawn()) {
      return withdrawn(course, snapshot.assessment(), now);
    }
    if (!snapshot.latest()) {
      return Decision.silent(course);
    }
    var set = Triggers.setOf(snapshot);
    var earlier = course.recent().before(set);
    var limits = Limits.of(course.plan(), course.watch().totalsSigned(), now);
    var found = triggers.evaluate(snapshot, earlier, limits);
    boolean late = snapshot.asOf().plus(policy.backEntry()).isBefore(now);
    var watch = Lateness.after(course.lateness(), snapshot);
    // Long after its time a picture calls nobody while the next set is still to come.
    boolean waits = late && watch != null && !watch.isDueAt(now);
    var judged = judged(snapshot, late ? triggers.late(found, snapshot.asOf()) : found, waits);
    var next = course.withPicture(earlier.plus(found.mark()), watch, judged);
    if (!next.place().present()) {
      return Decision.silent(next);
    }
    var told = suppressed(before.watch().suppressed(), next, judged.suppressed());
    var running = next.episode();
    if (running != null) {
      return told.then(follow(next, running, judged, snapshot, isNew(course, set), now));
    }
    return waits ? told.then(Decision.silent(next)) : told.then(alarms.open(next, judged, now));
  }

  private static Judgement judged(Snapshot snapshot, Evaluation found, boolean untold) {
    var totals =
        snapshot.scores().stream()
            .collect(Collectors.toMap(Score::id, Score::low, BigDecimal::max));
    return new Judgement(
        snapshot.assessment(), snapshot.asOf(), found.fired(), found.suppressed(), totals, untold);
  }

  /**
   * An assessment was a mistake, perhaps another patient's: what rests on it alone goes at once,
   * and nobody has answered what it showed. The picture that counts instead follows.
   */
  private Decision withdrawn(Course course, String assessment, Instant now) {
    var judged = course.watch().newest();
    boolean newest = judged != null && judged.assessment().equals(assessment);
    var next = newest ? unmeasured(course, now) : course;
    var running = next.episode();
    if (running == null || running.concerns().stream().noneMatch(c -> c.restsOn(assessment))) {
      return Decision.silent(next);
    }
    var left =
        running
            .unanswered(assessment)
            .withConcerns(Concerns.without(running.concerns(), assessment));
    return left.concerns().isEmpty()
        ? closed(next, running, left, "entered in error", now)
        : settled(next, running, left);
  }

  /** As before the newest picture, as far as that is known. */
  private Course unmeasured(Course course, Instant now) {
    var admitted = course.place().admitted();
    var watch =
        admitted == null
            ? course.lateness()
            : Lateness.first(admitted, policy.triggers().firstSet(), now);
    return course.withoutPicture(watch);
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
      Judgement judged,
      Snapshot snapshot,
      boolean newSet,
      Instant now) {
    boolean late = course.lateness() != null && course.lateness().step() > 0;
    var concerns =
        Concerns.after(
            running.concerns(),
            judged,
            course.recent(),
            policy.recovery(),
            rule -> Trigger.isWorry(rule) || (rule.equals("overdue") && late));
    if (concerns.isEmpty()) {
      boolean mistaken = running.concerns().stream().allMatch(judged::corrects);
      var why = mistaken ? "entered in error" : "recovered";
      return closed(course, running, running.withConcerns(concerns), why, now);
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

  private Decision closed(Course course, Case before, Case after, String why, Instant now) {
    return turns.changed(
        course, before, after.closed(now, why), "closed", Happening.SERVICE, null, why);
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
