package org.driftward.alerts.core.episode;

import java.time.Instant;

/** Concern about one encounter that goes on in another, because the two were one. */
record Merging(Turns turns, Alarms alarms, Leaving leaving) {

  /**
   * The episode goes over as it stands, with its owner and its running clock; on another ward its
   * people are called.
   */
  Decision inherited(Course survivor, Case running, Course from, Instant now) {
    var course = survivor.opened(running);
    var why = "merged from " + from.encounter();
    return survivor.place().ward().equals(from.place().ward())
        ? turns.changed(course, running, running, "moved", Happening.SERVICE, null, why)
        : leaving.transferred(course, running, why, turns.of(running, null, now));
  }

  /** One card for each patient: the concerns join the episode that runs there already. */
  Decision joined(Course survivor, Case own, Case other, String from, Instant now) {
    var next = own.withConcerns(Concerns.together(own.concerns(), other.concerns()));
    var note = "merged from " + from;
    return alarms.isAlarm(own, next)
        ? alarms.sound(survivor, own, next, Happening.SERVICE, note, now)
        : turns.changed(survivor, own, next, "reasons-changed", Happening.SERVICE, note, null);
  }
}
