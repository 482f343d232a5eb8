package org.driftward.alerts.core.episode;

import java.time.Instant;
import java.util.stream.Collectors;

/** Concern about one encounter that goes on in another, because the two were one. */
record Merging(Turns turns, Alarms alarms, Leaving leaving) {

  /**
   * The episode goes over as it stands, with its owner and its running clock; on another ward its
   * people are called. The sets of the surviving encounter were no recovery from it.
   */
  Decision inherited(Course survivor, Case running, Course from, Instant now) {
    var course = meeting(survivor, running).opened(running);
    var why = "merged from " + from.encounter();
    return survivor.place().ward().equals(from.place().ward())
        ? turns.changed(course, running, running, "moved", Happening.SERVICE, null, why)
        : leaving.transferred(course, running, why, turns.of(running, null, now));
  }

  /** One card for each patient: the concerns join the episode that runs there already. */
  Decision joined(Course survivor, Case own, Case other, String from, Instant now) {
    var course = meeting(survivor, other);
    var next = own.withConcerns(Concerns.together(own.concerns(), other.concerns()));
    var note = "merged from " + from;
    return alarms.isAlarm(own, next)
        ? alarms.sound(course, own, next, Happening.SERVICE, note, now)
        : turns.changed(course, own, next, "reasons-changed", Happening.SERVICE, note, null);
  }

  /** The surviving encounter is over: if that is taken back, the concern is there. */
  Course left(Course survivor, Case running) {
    var both = Concerns.together(survivor.watch().unfinished(), running.concerns());
    return meeting(survivor, running).withWatch(survivor.watch().leaving(both));
  }

  private static Course meeting(Course survivor, Case other) {
    var rules = other.concerns().stream().map(Concern::rule).collect(Collectors.toSet());
    return survivor.withRecent(survivor.recent().meeting(rules));
  }
}
