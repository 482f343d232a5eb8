package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import org.driftward.alerts.core.episode.DeadlineKind;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.ground.failure.Isolation;
import org.driftward.ground.store.Database;

/**
 * Lets the clocks that have run out take effect, each course in a transaction of its own, so that
 * one that cannot be read keeps no other on its rung. Any number of instances may do so at once.
 */
@Singleton
public class DueCourses {

  private static final String PART = "ladder-clock";

  private final Database database;
  private final Courses courses;
  private final Escalation escalation;
  private final BadRows badRows;

  public DueCourses(Database database, Courses courses, Escalation escalation, BadRows badRows) {
    this.database = database;
    this.courses = courses;
    this.escalation = escalation;
    this.badRows = badRows;
  }

  /**
   * Takes the longest waiting.
   *
   * @param limit at most so many courses
   * @return how many clocks took effect
   */
  public int fire(int limit) {
    var fired = new Tally();
    Isolation.apart(
        database.read(handle -> Deadlines.due(handle, courses.now(), limit)),
        encounter -> fired.add(fire(encounter)),
        (encounter, why) -> badRows.course(encounter, PART, why));
    return fired.sum();
  }

  private int fire(String encounter) {
    return courses.changeIfFree(
        encounter, session -> session.knows(encounter) ? fire(session, encounter) : 0);
  }

  private int fire(Session session, String encounter) {
    int fired = 0;
    for (var kind : DeadlineKind.values()) {
      var decision = escalation.ranOut(session.course(encounter), kind, session.now());
      session.take(decision);
      fired += decision.happenings().isEmpty() ? 0 : 1;
    }
    // A row that did not fire was written under another policy; it is put right.
    session.refresh(encounter);
    return fired;
  }
}
