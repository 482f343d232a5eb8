package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.alerts.core.trigger.Trigger;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/** Opens episodes, and calls people again when something is new or worse. */
final class Alarms {

  private final EscalationPolicy policy;
  private final Turns turns;

  Alarms(EscalationPolicy policy) {
    this.policy = policy;
    this.turns = new Turns(policy.ladder());
  }

  /**
   * @param time clinical time of what fired
   */
  Decision open(Course course, List<Trigger> fired, Instant time, String by, Instant now) {
    var quiet = course.quiet();
    if (fired.isEmpty() || (quiet != null && quiet.covers(fired, now))) {
      return Decision.silent(course);
    }
    var concerns = Concerns.of(fired, time);
    var level = Concerns.level(concerns).orElseThrow();
    var standing = first(course, level, now);
    var opened = Case.opened(course.nextEpisode(), concerns, standing, time, now);
    var episode = opened.episode(course.encounter(), course.place(), policy.ladder());
    var reason = standing.state() == EpisodeState.HELD ? "the care plan holds escalation" : null;
    return new Decision(
        course.opened(opened), List.of(new EpisodeChanged("opened", by, null, reason, episode)));
  }

  /** While the care plan holds escalation, concern is kept and shown, and calls nobody. */
  private Standing first(Course course, Level level, Instant now) {
    var held = course.heldUntil(now);
    var plan = course.plan();
    if (held != null && plan != null) {
      var signer = new Owner(plan.signedBy(), plan.signedBy());
      return new Standing(EpisodeState.HELD, signer, 0, held, now);
    }
    var due = now.plus(policy.ladder().of(level).rung(0).acknowledge());
    return Standing.open(null, 0, due, now);
  }

  /** One more trigger that came by itself, not with a picture. */
  Decision join(
      Course course,
      Case running,
      Trigger trigger,
      String by,
      @Nullable String note,
      boolean alwaysNews,
      Instant now) {
    var next = running.withConcerns(Concerns.with(running.concerns(), trigger, now));
    if (alwaysNews || isAlarm(running, next)) {
      return sound(course, running, next, by, note, now);
    }
    return turns.changed(course, running, next, "reasons-changed", by, note, null);
  }

  /** Worse, or after somebody has looked: something new that is more than a hint. */
  boolean isAlarm(Case before, Case after) {
    if (after.level().compareTo(before.level()) > 0) {
      return true;
    }
    return before.state() == EpisodeState.ATTENDED
        && after.concerns().stream()
            .anyMatch(
                concern ->
                    concern.seen() != null
                        && concern.level() != Level.LOW
                        && Quiet.isNews(before.answered(), concern.rule(), concern.level()));
  }

  Decision sound(
      Course course, Case before, Case after, String by, @Nullable String note, Instant now) {
    var turn = turns.of(after, before.standing().owner(), now);
    var standing = Stage.of(before.standing()).alarm(before.standing(), turn);
    var next = after.movedTo(standing).alarmedAt(now);
    boolean raised = after.level().compareTo(before.level()) > 0;
    boolean reopened = before.state() != EpisodeState.OPEN && standing.state() == EpisodeState.OPEN;
    var kind = raised ? "raised" : reopened ? "reopened" : "reasons-changed";
    return turns.changed(course, before, next, kind, by, note, null);
  }

  Decision reopen(Course course, Case before, Case after, String reason, Instant now) {
    var turn = turns.of(after, before.standing().owner(), now);
    var standing = Stage.of(before.standing()).alarm(before.standing(), turn);
    var next = after.movedTo(standing).alarmedAt(now);
    return turns.changed(course, before, next, "reopened", Happening.SERVICE, null, reason);
  }
}
