package org.driftward.alerts.store;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.jdbi.v3.core.Handle;

/** The table of the clocks that run. */
final class Deadlines {

  private Deadlines() {}

  /** Replaces the clocks of these courses. */
  static void write(Handle handle, List<Course> courses, EscalationPolicy policy) {
    if (courses.isEmpty()) {
      return;
    }
    handle
        .createUpdate("DELETE FROM alerts.deadline WHERE encounter = ANY (:encounters)")
        .bindArray("encounters", String.class, courses.stream().map(Course::encounter).toList())
        .execute();
    var batch =
        handle.prepareBatch(
            "INSERT INTO alerts.deadline (encounter, kind, due) VALUES (:encounter, :kind, :due)");
    for (var course : courses) {
      course
          .deadlines(policy)
          .forEach(
              (kind, due) ->
                  batch
                      .bind("encounter", course.encounter())
                      .bind("kind", kind.word())
                      .bind("due", due)
                      .add());
    }
    if (batch.size() > 0) {
      batch.execute();
    }
  }

  /**
   * Whoever has locked a course owns its clocks. The courses of which a clock has run out, the
   * longest waiting first, locked. What somebody else works on now is left to them.
   */
  static List<Course> due(Handle handle, Instant now, int limit) {
    return handle
        .createQuery(
            "SELECT c.body FROM alerts.deadline d JOIN alerts.course c USING (encounter)"
                + " WHERE d.due <= :now ORDER BY d.due LIMIT :limit FOR UPDATE OF c SKIP LOCKED")
        .bind("now", now)
        .bind("limit", limit)
        .mapTo(String.class)
        .map(Json.COURSE::read)
        .list();
  }
}
