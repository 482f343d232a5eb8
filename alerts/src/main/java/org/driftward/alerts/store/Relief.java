package org.driftward.alerts.store;

import java.util.List;
import java.util.stream.Collectors;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.shift.Duties;
import org.driftward.alerts.core.shift.Roster;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * Sees to it that no transaction leaves an episode with somebody who has gone off duty, whichever
 * way it came to them. The shifts it reads are locked against their end: either the end waits for
 * this transaction and passes the episode on afterwards, or this transaction sees the end.
 */
final class Relief {

  private final Escalation escalation;
  private final Duties duties;

  Relief(Escalation escalation) {
    this.escalation = escalation;
    this.duties = new Duties(escalation.policy().shifts());
  }

  void settle(Handle handle, Session session) {
    var owned = session.changed().stream().filter(course -> owner(course) != null).toList();
    if (owned.isEmpty()) {
      return;
    }
    var roster = roster(handle, owned);
    for (var course : owned) {
      var owner = String.valueOf(owner(course));
      if (!roster.off(owner)) {
        continue;
      }
      if (owner.equals(lastActed(session, course))) {
        var stays = duties.stayed(ShiftTable.nextId(handle), last(roster, owner), session.now());
        ShiftTable.insert(handle, stays);
        session.record(ShiftLines.of("stayed-on", owner, stays));
      } else {
        session.take(escalation.staffed(course, roster, session.now()));
      }
    }
  }

  private static Roster roster(Handle handle, List<Course> courses) {
    var accounts =
        courses.stream().map(Relief::owner).map(String::valueOf).collect(Collectors.toSet());
    var wards = courses.stream().map(course -> course.place().ward()).collect(Collectors.toSet());
    return ShiftTable.roster(handle, accounts, wards);
  }

  private static Shift last(Roster roster, String account) {
    return roster.last(account).orElseThrow();
  }

  private static @Nullable String owner(Course course) {
    var episode = course.episode();
    var owner = episode == null ? null : episode.standing().owner();
    return owner == null ? null : owner.account();
  }

  /** Whoever moved the episode last in this transaction is there, whatever the shift says. */
  private static @Nullable String lastActed(Session session, Course course) {
    return session.happenings().stream()
        .filter(EpisodeChanged.class::isInstance)
        .map(EpisodeChanged.class::cast)
        .filter(changed -> changed.episode().encounter().equals(course.encounter()))
        .reduce((first, last) -> last)
        .map(EpisodeChanged::by)
        .orElse(null);
  }
}
