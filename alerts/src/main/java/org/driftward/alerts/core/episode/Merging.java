package org.driftward.alerts.core.episode;

import java.time.Instant;

/** Concern about one encounter that goes on in another, because the two were one. */
record Merging(Turns turns, Alarms alarms) {

  /** The episode goes over as it stands, with its owner and its running clock. */
  Decision inherited(Course survivor, Case running, String from) {
    return turns.changed(
        survivor.opened(running),
        running,
        running,
        "moved",
        Happening.SERVICE,
        null,
        "merged from " + from);
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
