package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.HashSet;
import java.util.List;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.episode.DeadlineKind;
import org.driftward.alerts.core.episode.Escalation;

/** Lets the clocks that have run out take effect. Any number of instances may do so at once. */
@Singleton
public class DueCourses {

  private final Courses courses;
  private final Escalation escalation;

  public DueCourses(Courses courses, Escalation escalation) {
    this.courses = courses;
    this.escalation = escalation;
  }

  /**
   * Takes the longest waiting, in one transaction.
   *
   * @param limit at most so many
   * @return how many clocks took effect
   */
  public int fire(int limit) {
    var chosen = new HashSet<String>();
    return courses.inTransaction(
        handle -> {
          chosen.clear();
          var due = Deadlines.due(handle, courses.now(), limit);
          due.stream().map(Course::encounter).forEach(chosen::add);
          return due;
        },
        session -> {
          int fired = 0;
          for (var encounter : List.copyOf(chosen)) {
            fired += fire(session, encounter);
          }
          return fired;
        });
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
