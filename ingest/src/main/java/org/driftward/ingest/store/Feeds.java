package org.driftward.ingest.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.time.Instant;
import java.util.Collection;
import java.util.List;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.IntakeDesk;
import org.driftward.ingest.contract.IntakeDesk.Feed;
import org.driftward.ingest.contract.Word;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import org.jspecify.annotations.Nullable;

/** What each feed brought, minute by minute. */
final class Feeds {

  private static final Duration HOUR = Duration.ofHours(1);

  /** Nobody asks for minutes that are older. */
  private static final Duration KEPT = Duration.ofDays(2);

  private Feeds() {}

  static void add(Handle handle, Collection<FeedMinute> minutes) {
    if (minutes.isEmpty()) {
      return;
    }
    var batch =
        handle.prepareBatch(
            """
            INSERT INTO ingest.feed_minute (source, origin, minute, assessments, moves, refused,
              entry_lag, arrival_lag, last_at)
            VALUES (:source, :origin, :minute, :assessments, :moves, :refused, :entry, :arrival,
              :last)
            ON CONFLICT (source, origin, minute) DO UPDATE SET
              assessments = feed_minute.assessments + excluded.assessments,
              moves = feed_minute.moves + excluded.moves,
              refused = feed_minute.refused + excluded.refused,
              entry_lag = feed_minute.entry_lag + excluded.entry_lag,
              arrival_lag = feed_minute.arrival_lag + excluded.arrival_lag,
              last_at = greatest(feed_minute.last_at, excluded.last_at)
            """);
    var feeds =
        handle.prepareBatch(
            "INSERT INTO ingest.feed (source, origin, last_at) VALUES (:source, :origin, :last)"
                + " ON CONFLICT (source, origin) DO UPDATE"
                + " SET last_at = greatest(feed.last_at, excluded.last_at)");
    // In one order, so that two processes never wait for each other.
    minutes.stream()
        .sorted()
        .forEach(
            each -> {
              FeedMinute.Key key = each.key();
              batch
                  .bind("source", key.source().word())
                  .bind("origin", key.origin())
                  .bind("minute", key.minute())
                  .bind("assessments", each.assessments())
                  .bind("moves", each.moves())
                  .bind("refused", each.refused())
                  .bind("entry", each.entryLag())
                  .bind("arrival", each.arrivalLag())
                  .bind("last", each.lastAt())
                  .add();
              feeds
                  .bind("source", key.source().word())
                  .bind("origin", key.origin())
                  .bind("last", each.lastAt())
                  .add();
            });
    batch.execute();
    feeds.execute();
  }

  static void forget(Handle handle, Instant now) {
    handle
        .createUpdate("DELETE FROM ingest.feed_minute WHERE minute < :before")
        .bind("before", now.minus(KEPT))
        .execute();
  }

  static List<Feed> list(Handle handle, Instant now) {
    return handle
        .createQuery(
            """
            SELECT f.source, f.origin, f.last_at,
              coalesce(sum(m.assessments), 0) AS assessments, coalesce(sum(m.moves), 0) AS moves,
              coalesce(sum(m.refused), 0) AS refused,
              coalesce(sum(m.assessments + m.moves + m.refused)
                FILTER (WHERE m.minute >= :recent), 0) AS recent,
              sum(m.entry_lag) / nullif(sum(m.assessments), 0) AS entry_lag,
              sum(m.arrival_lag) / nullif(sum(m.assessments), 0) AS arrival_lag
            FROM ingest.feed f LEFT JOIN ingest.feed_minute m
              ON m.source = f.source AND m.origin = f.origin AND m.minute >= :hour
            GROUP BY f.source, f.origin, f.last_at ORDER BY f.last_at DESC, f.origin
            """)
        .bind("hour", now.minus(HOUR))
        .bind("recent", now.minus(IntakeDesk.RECENT))
        .map(Feeds::feed)
        .list();
  }

  private static Feed feed(ResultSet row, StatementContext context) throws SQLException {
    return new Feed(
        Word.parse(Source.class, row.getString("source")),
        row.getString("origin"),
        Columns.time(row, "last_at"),
        row.getLong("assessments"),
        row.getLong("moves"),
        row.getLong("refused"),
        row.getLong("recent"),
        lag(row, "entry_lag"),
        lag(row, "arrival_lag"));
  }

  private static @Nullable Duration lag(ResultSet row, String column) throws SQLException {
    long millis = row.getLong(column);
    return row.wasNull() ? null : Duration.ofMillis(millis);
  }
}
