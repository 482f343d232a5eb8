package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.List;
import java.util.stream.Collectors;
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

  /** What a picture gives reason to, unless somebody has closed over the same or worse. */
  Decision open(Course course, Judgement judged, Instant now) {
    var quiet = course.quiet();
    return judged.fired().isEmpty() || (quiet != null && quiet.covers(judged.fired(), now))
        ? Decision.silent(course)
        : open(course, concerns(judged), judged.asOf(), Happening.SERVICE, now);
  }

  /** A trigger that came by itself, not with a picture. */
  Decision open(Course course, Trigger trigger, String by, Instant now) {
    return open(course, Concerns.of(List.of(trigger), now, null), now, by, now);
  }

  /**
   * @param time clinical time of the first concern
   */
  Decision open(Course course, List<Concern> concerns, Instant time, String by, Instant now) {
    var level = Concerns.level(concerns).orElseThrow();
    var standing = first(course, concerns, level, now);
    var opened = Case.opened(course.nextEpisode(), concerns, standing, time, now);
    var episode = opened.episode(course.encounter(), course.place(), policy.ladder());
    var reason = standing.state() == EpisodeState.HELD ? "the care plan holds escalation" : null;
    return new Decision(
        course.opened(opened), List.of(new EpisodeChanged("opened", by, null, reason, episode)));
  }

  /** A care plan that holds escalation keeps quiet what its signer saw, and nothing worse. */
  private Standing first(Course course, List<Concern> concerns, Level level, Instant now) {
    var held = course.heldUntil(now);
    var plan = course.plan();
    if (held != null && plan != null && course.watch().coversBySignature(concerns)) {
      var signer = new Owner(plan.signedBy(), plan.signedBy());
      return new Standing(EpisodeState.HELD, signer, 0, held, now);
    }
    var due = now.plus(policy.ladder().of(level).rung(0).acknowledge());
    return Standing.open(null, 0, due, now);
  }

  /**
   * The newest picture is judged again, because something ended that had kept some of it quiet, or
   * because concern came from elsewhere. Sets that were taken before are no recovery from it.
   */
  Decision again(Course course, List<Concern> concerns, String why, Instant now) {
    var rules = concerns.stream().map(Concern::rule).collect(Collectors.toSet());
    var next = course.withRecent(course.recent().meeting(rules));
    var running = next.episode();
    if (concerns.isEmpty()) {
      return Decision.silent(next);
    }
    return running == null
        ? open(next, concerns, now, Happening.SERVICE, now)
        : join(next, running, concerns, Happening.SERVICE, why, now);
  }

  /** What altered limits have kept quiet is quiet no more. */
  Decision unlimited(Course course, Instant now) {
    var judged = course.watch().newest();
    if (judged == null || judged.suppressed().isEmpty()) {
      return Decision.silent(course);
    }
    var free = judged.unlimited();
    var next = course.withWatch(course.watch().over(free));
    var quiet = next.quiet();
    boolean silent =
        !next.place().present()
            || (next.episode() == null && quiet != null && quiet.covers(free.fired(), now));
    return silent
        ? Decision.silent(next)
        : again(next, concerns(free), "the altered limits are over", now);
  }

  static List<Concern> concerns(Judgement judged) {
    return Concerns.of(judged.fired(), judged.asOf(), judged.assessment());
  }

  /** One more trigger that came by itself, not with a picture. */
  Decision join(
      Course course, Case running, Trigger trigger, String by, @Nullable String note, Instant now) {
    return join(course, running, Concerns.of(List.of(trigger), now, null), by, note, now);
  }

  private Decision join(
      Course course,
      Case running,
      List<Concern> more,
      String by,
      @Nullable String note,
      Instant now) {
    var next = running.withConcerns(Concerns.with(running.concerns(), more));
    return isAlarm(running, next)
        ? sound(course, running, next, by, note, now)
        : turns.changed(course, running, next, "reasons-changed", by, note, null);
  }

  /**
   * Worse than the present alarm says, or than whoever answered it has seen. What is no more than a
   * hint waits for somebody who is there or on the way; a worry waits for nobody.
   */
  boolean isAlarm(Case before, Case after) {
    return after.level().compareTo(before.level()) > 0
        || after.concerns().stream().anyMatch(concern -> isAlarm(before, concern));
  }

  private static boolean isAlarm(Case before, Concern concern) {
    return switch (before.state()) {
      case OPEN -> concern.isWorry() && !before.knows(concern);
      case ACKNOWLEDGED, ATTENDED ->
          before.isNews(concern) && (concern.level() != Level.LOW || concern.isWorry());
      case HELD -> before.isNews(concern);
      case CLOSED -> false;
    };
  }

  Decision sound(
      Course course, Case before, Case after, String by, @Nullable String note, Instant now) {
    return sound(course, before, after, kind(before, after), by, note, null, now);
  }

  /** What stands has not become worse, but has gone on for too long. */
  Decision reopen(Course course, Case before, Case after, String reason, Instant now) {
    return sound(course, before, after, "reopened", Happening.SERVICE, null, reason, now);
  }

  private static String kind(Case before, Case after) {
    if (after.level().compareTo(before.level()) > 0) {
      return "raised";
    }
    return before.state() == EpisodeState.OPEN ? "called-again" : "reopened";
  }

  private Decision sound(
      Course course,
      Case before,
      Case after,
      String kind,
      String by,
      @Nullable String note,
      @Nullable String reason,
      Instant now) {
    var turn = turns.of(after, before.standing().owner(), now);
    var standing = Stage.of(before.standing()).alarm(before.standing(), turn);
    return turns.changed(
        course, before, after.movedTo(standing).alarmedAt(now), kind, by, note, reason);
  }
}
