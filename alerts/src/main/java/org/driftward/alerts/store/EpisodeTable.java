package org.driftward.alerts.store;

import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ingest.contract.Level;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** What others see of the episodes. */
final class EpisodeTable {

  /** More than a person can look through, and few enough for one answer. */
  private static final int LONGEST_LIST = 1000;

  private static final String MOST_URGENT_FIRST =
      " ORDER BY CASE level WHEN 'high' THEN 0 WHEN 'medium' THEN 1 ELSE 2 END,"
          + " CASE state WHEN 'open' THEN 0 WHEN 'closed' THEN 2 ELSE 1 END,"
          + " opened_at, id LIMIT :longest";

  private EpisodeTable() {}

  static void write(Handle handle, Collection<Episode> episodes) {
    if (episodes.isEmpty()) {
      return;
    }
    var batch =
        handle.prepareBatch(
            """
            INSERT INTO alerts.episode
              (id, encounter, ward, state, level, due, opened_at, body)
            VALUES (:id, :encounter, :ward, :state, :level, :due, :openedAt, :body::jsonb)
            ON CONFLICT (id) DO UPDATE SET encounter = excluded.encounter,
              ward = excluded.ward, state = excluded.state, level = excluded.level, due = excluded.due, body = excluded.body
            """);
    // What is over first: there is one running episode for an encounter at any time.
    episodes.stream()
        .sorted((a, b) -> Boolean.compare(b.isOver(), a.isOver()))
        .forEach(
            episode ->
                batch
                    .bind("id", episode.id())
                    .bind("encounter", episode.encounter())
                    .bind("ward", episode.ward())
                    .bind("state", episode.state().word())
                    .bind("level", episode.level().word())
                    .bind("due", episode.due())
                    .bind("openedAt", episode.openedAt())
                    .bind("body", Json.EPISODE.text(episode))
                    .add());
    batch.execute();
  }

  static Optional<Episode> find(Handle handle, String id) {
    return handle
        .createQuery("SELECT body FROM alerts.episode WHERE id = :id")
        .bind("id", id)
        .mapTo(String.class)
        .findOne()
        .map(Json.EPISODE::read);
  }

  static Optional<Episode> running(Handle handle, String encounter) {
    return handle
        .createQuery(
            "SELECT body FROM alerts.episode"
                + " WHERE encounter = :encounter AND state <> 'closed'")
        .bind("encounter", encounter)
        .mapTo(String.class)
        .findOne()
        .map(Json.EPISODE::read);
  }

  /** Makes something of an owner, the ward and the encounter. */
  interface Holding<T> {
    T of(String account, String ward, String encounter);
  }

  /** Every running episode that somebody owns. */
  static <T> List<T> held(Handle handle, Holding<T> holding) {
    return handle
        .createQuery(
            "SELECT body->>'owner' AS owner, ward, encounter FROM alerts.episode"
                + " WHERE state <> 'closed' AND body->>'owner' IS NOT NULL ORDER BY encounter")
        .map(
            (row, context) ->
                holding.of(
                    row.getString("owner"), row.getString("ward"), row.getString("encounter")))
        .list();
  }

  /** Most urgent first. */
  static List<Episode> list(
      Handle handle, @Nullable Set<String> wards, Set<EpisodeState> states, @Nullable Level level) {
    var sql =
        "SELECT body FROM alerts.episode WHERE "
            + (states.isEmpty() ? "state <> 'closed'" : "state = ANY (:states)")
            + (wards == null ? "" : " AND ward = ANY (:wards)")
            + (level == null ? "" : " AND level = :level")
            + MOST_URGENT_FIRST;
    var query = handle.createQuery(sql).bind("longest", LONGEST_LIST);
    if (!states.isEmpty()) {
      query.bindArray("states", String.class, states.stream().map(EpisodeState::word).toList());
    }
    if (wards != null) {
      query.bindArray("wards", String.class, wards);
    }
    if (level != null) {
      query.bind("level", level.word());
    }
    return query.mapTo(String.class).map(Json.EPISODE::read).list();
  }
}
