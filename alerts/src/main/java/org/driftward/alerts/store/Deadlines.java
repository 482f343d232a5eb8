package org.driftward.alerts.store;

import java.time.Instant;
import java.util.List;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.policy.EscalationPolicy;
import org.driftward.ground.store.Quarantine;
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
   * Encounters of which a clock has run out, the longest waiting first; what is set aside is left
   * until it is tried again. Whoever then locks a course owns its clocks.
   */
  static List<String> due(Handle handle, Instant now, int limit) {
    return handle
        .createQuery(
            "SELECT encounter FROM alerts.deadline WHERE due <= :now AND NOT "
                + Quarantine.waits("'" + BadRows.COURSE + "/' || encounter")
                + " GROUP BY encounter ORDER BY min(due), encounter LIMIT :limit")
        .bind("now", now)
        .bind("limit", limit)
        .mapTo(String.class)
        .list();
  }
}
