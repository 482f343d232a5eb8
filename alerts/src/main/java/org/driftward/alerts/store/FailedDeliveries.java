package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.Optional;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.policy.Audience;
import org.driftward.ground.failure.Isolation;
import org.driftward.ground.store.Database;
import org.driftward.ground.store.Quarantine;
import org.driftward.ingest.contract.Word;
import org.jdbi.v3.core.Handle;

/**
 * Tells the ladder of alarms that did not arrive. A failure is a row until the ladder has heard of
 * it, so a crash in between costs nothing. Any number of instances may look at once.
 */
@Singleton
public class FailedDeliveries {

  private static final String PART = "ladder-clock";

  private final Database database;
  private final Courses courses;
  private final Escalation escalation;
  private final BadRows badRows;

  public FailedDeliveries(
      Database database, Courses courses, Escalation escalation, BadRows badRows) {
    this.database = database;
    this.courses = courses;
    this.escalation = escalation;
    this.badRows = badRows;
  }

  /** A failure of which the ladder has not heard. */
  private record Failure(String key, String encounter, String episode) {}

  /**
   * Whoever of an audience cannot be reached by any address makes the ladder climb, once for each
   * alarm, and only while no newer alarm has gone out. Each failure is worked by itself.
   *
   * @param limit at most so many failures
   * @return how many episodes climbed
   */
  public int climb(int limit) {
    var climbed = new Tally();
    Isolation.apart(
        database.read(handle -> unheard(handle, limit)),
        failure -> climbed.add(climb(failure)),
        (failure, why) -> badRows.delivery(failure.key(), failure.encounter(), PART, why));
    return climbed.sum();
  }

  /** Only behind the course's lock it is sure that no newer alarm comes. */
  private int climb(Failure failure) {
    return courses.changeIfFreeWith(
        failure.encounter(),
        (handle, session) ->
            session.knows(failure.encounter()) && hear(handle, failure.key())
                ? unreached(handle, failure.key())
                    .map(who -> climb(session, failure, who))
                    .orElse(0)
                : 0);
  }

  private int climb(Session session, Failure failure, Audience who) {
    var course = session.course(failure.encounter());
    var why = "no message reached the " + who.words();
    var decision = escalation.unreached(course, failure.episode(), why, session.now());
    session.take(decision);
    return decision.happenings().isEmpty() ? 0 : 1;
  }

  private List<Failure> unheard(Handle handle, int limit) {
    return handle
        .createQuery(
            "SELECT d.key, n.encounter, n.episode FROM alerts.delivery d"
                + " JOIN alerts.notice n ON n.sequence = d.notice WHERE d.unheard AND NOT "
                + Quarantine.waits("'" + BadRows.DELIVERY + "/' || d.key")
                + " ORDER BY d.changed LIMIT :limit")
        .bind("now", courses.now())
        .bind("limit", limit)
        .map(
            (row, context) ->
                new Failure(
                    row.getString("key"), row.getString("encounter"), row.getString("episode")))
        .list();
  }

  /**
   * The audience is empty where it has been told otherwise, may still be told, or has been called
   * again since.
   */
  private static Optional<Audience> unreached(Handle handle, String key) {
    return handle
        .createQuery(
            """
            SELECT a.audience FROM alerts.delivery d
            JOIN alerts.notice n ON n.sequence = d.notice, unnest(d.audiences) AS a (audience)
            WHERE d.key = :key
              AND NOT EXISTS (SELECT 1 FROM alerts.notice later
                              WHERE later.episode = n.episode AND later.sequence > n.sequence)
              AND NOT EXISTS (SELECT 1 FROM alerts.delivery other
                              WHERE other.notice = n.sequence
                                AND a.audience = ANY (other.audiences)
                                AND other.state NOT IN ('given-up', 'not-sent'))
            ORDER BY 1 LIMIT 1
            """)
        .bind("key", key)
        .mapTo(String.class)
        .findOne()
        .map(word -> Word.parse(Audience.class, word));
  }

  /**
   * @return whether nobody has heard of it yet
   */
  private static boolean hear(Handle handle, String key) {
    return handle
            .createUpdate("UPDATE alerts.delivery SET unheard = false WHERE key = :key AND unheard")
            .bind("key", key)
            .execute()
        == 1;
  }
}
