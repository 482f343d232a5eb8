package org.driftward.alerts.core.episode;

import java.time.Duration;
import java.time.Instant;
import java.util.List;

/**
 * What a patient's coming, going and coming back mean.
 *
 * @param firstSet how long after admission the first set of observations is due
 */
record Stays(Alarms alarms, Duration firstSet) {

  /** In a place; whoever has never been measured is due by the time of admission. */
  Course at(Course course, Place place, Instant now) {
    var next = course.withPlace(place);
    var admitted = place.admitted();
    return admitted == null || course.lateness() != null
        ? next
        : next.withLateness(Lateness.first(admitted, firstSet, now));
  }

  /** A discharge may be a mistake; what was unfinished then is kept. */
  Course left(Course course, Case running) {
    return course.withWatch(course.watch().leaving(running.concerns()));
  }

  /**
   * The patient has been here all along: what was unfinished goes on, and the newest picture
   * counts.
   */
  Decision takenBack(Course course, Instant now) {
    var watch = course.watch();
    var judged = watch.newest();
    var next = course.withWatch(watch.leaving(List.of()));
    var quiet = next.quiet();
    boolean seen = judged != null && quiet != null && quiet.covers(judged.fired(), now);
    var concerns =
        judged == null || seen
            ? watch.unfinished()
            : Concerns.with(watch.unfinished(), Alarms.concerns(judged));
    return alarms.again(next, concerns, "the discharge was taken back", now);
  }
}
