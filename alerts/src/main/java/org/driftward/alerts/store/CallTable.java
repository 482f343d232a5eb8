package org.driftward.alerts.store;

import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Call;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** The records of calls, one for an episode. */
final class CallTable {

  private CallTable() {}

  /**
   * @param began only kept with the first version
   */
  static void write(Handle handle, Call call, Instant began) {
    handle
        .createUpdate(
            """
            INSERT INTO alerts.call (episode, encounter, ward, began_at, finished, body)
            VALUES (:episode, :encounter, :ward, :began, :finished, :body::jsonb)
            ON CONFLICT (episode) DO UPDATE
              SET finished = excluded.finished, body = excluded.body
            """)
        .bind("episode", call.episode())
        .bind("encounter", call.encounter())
        .bind("ward", call.ward())
        .bind("began", began)
        .bind("finished", call.finished())
        .bind("body", Json.CALL.text(call))
        .execute();
  }

  static Optional<Call> find(Handle handle, String episode) {
    return handle
        .createQuery("SELECT body FROM alerts.call WHERE episode = :episode")
        .bind("episode", episode)
        .mapTo(String.class)
        .findOne()
        .map(Json.CALL::read);
  }

  static int since(Handle handle, String encounter, Instant from) {
    return handle
        .createQuery(
            "SELECT count(*) FROM alerts.call WHERE encounter = :encounter AND began_at >= :from")
        .bind("encounter", encounter)
        .bind("from", from)
        .mapTo(Integer.class)
        .one();
  }

  static List<Call> list(Handle handle, @Nullable Set<String> wards, Instant from, Instant to) {
    return handle
        .createQuery(
            "SELECT body FROM alerts.call WHERE began_at >= :from AND began_at < :to"
                + " AND (:all OR ward = ANY (:wards)) ORDER BY began_at DESC, episode")
        .bind("from", from)
        .bind("to", to)
        .bind("all", wards == null)
        .bindArray("wards", String.class, wards == null ? Set.of() : wards)
        .mapTo(String.class)
        .map(Json.CALL::read)
        .list();
  }
}
