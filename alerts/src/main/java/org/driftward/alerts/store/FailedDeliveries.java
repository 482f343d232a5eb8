package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.policy.Audience;
import org.driftward.ingest.contract.Word;
import org.jdbi.v3.core.Handle;

/**
 * Tells the ladder of alarms that did not arrive. A failure is a row until the ladder has heard of
 * it, so a crash in between costs nothing. Any number of instances may look at once.
 */
@Singleton
public class FailedDeliveries {

  private final Courses courses;
  private final Escalation escalation;

  public FailedDeliveries(Courses courses, Escalation escalation) {
    this.courses = courses;
    this.escalation = escalation;
  }

  /** A failure of which the ladder has not heard, of an alarm whose course this one has locked. */
  private record Failure(String key, String encounter, String episode, Optional<Audience> who) {}

  /**
   * Whoever of an audience cannot be reached by any address makes the ladder climb, once for each
   * alarm, and only while no newer alarm has gone out.
   *
   * @param limit at most so many failures
   * @return how many episodes climbed
   */
  public int climb(int limit) {
    var failures = new ArrayList<Failure>();
    return courses.inTransaction(
        handle -> {
          var locked = lock(handle, limit);
          failures.clear();
          failures.addAll(unheard(handle, locked.stream().map(Course::encounter).toList()));
          heard(handle, failures.stream().map(Failure::key).toList());
          return locked;
        },
        session -> {
          int climbed = 0;
          Set<String> done = new HashSet<>();
          for (var failure : failures) {
            if (failure.who().isPresent() && done.add(failure.episode())) {
              climbed += climb(session, failure) ? 1 : 0;
            }
          }
          return climbed;
        });
  }

  private boolean climb(Session session, Failure failure) {
    var who = failure.who().map(Audience::words).orElseThrow();
    var course = session.course(failure.encounter());
    var why = "no message reached the " + who;
    var decision = escalation.unreached(course, failure.episode(), why, session.now());
    session.take(decision);
    return !decision.happenings().isEmpty();
  }

  /**
   * Courses first, as everybody does; only behind the lock it is sure that no newer alarm comes.
   */
  private static List<Course> lock(Handle handle, int limit) {
    return handle
        .createQuery(
            """
            SELECT body FROM alerts.course WHERE encounter IN
              (SELECT n.encounter FROM alerts.delivery d
               JOIN alerts.notice n ON n.sequence = d.notice
               WHERE d.unheard ORDER BY d.changed LIMIT :limit)
            ORDER BY encounter FOR UPDATE SKIP LOCKED
            """)
        .bind("limit", limit)
        .mapTo(String.class)
        .map(Json.COURSE::read)
        .list();
  }

  /**
   * The audience is empty where it has been told otherwise, may still be told, or has been called
   * again since.
   */
  private static List<Failure> unheard(Handle handle, List<String> encounters) {
    return handle
        .createQuery(
            """
            SELECT d.key, n.encounter, n.episode,
              (SELECT a.audience FROM unnest(d.audiences) AS a (audience)
               WHERE NOT EXISTS (SELECT 1 FROM alerts.notice later
                                 WHERE later.episode = n.episode AND later.sequence > n.sequence)
                 AND NOT EXISTS (SELECT 1 FROM alerts.delivery other
                                 WHERE other.notice = n.sequence
                                   AND a.audience = ANY (other.audiences)
                                   AND other.state NOT IN ('given-up', 'not-sent'))
               ORDER BY 1 LIMIT 1) AS audience
            FROM alerts.delivery d
            JOIN alerts.notice n ON n.sequence = d.notice
            WHERE d.unheard AND n.encounter = ANY (:encounters) ORDER BY d.changed
            """)
        .bindArray("encounters", String.class, encounters)
        .map(
            (row, context) ->
                new Failure(
                    row.getString("key"),
                    row.getString("encounter"),
                    row.getString("episode"),
                    Optional.ofNullable(row.getString("audience"))
                        .map(word -> Word.parse(Audience.class, word))))
        .list();
  }

  private static void heard(Handle handle, List<String> keys) {
    if (!keys.isEmpty()) {
      handle
          .createUpdate("UPDATE alerts.delivery SET unheard = false WHERE key = ANY (:keys)")
          .bindArray("keys", String.class, keys)
          .execute();
    }
  }
}
