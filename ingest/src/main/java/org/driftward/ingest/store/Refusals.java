package org.driftward.ingest.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Base64;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.stream.Collectors;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.IntakeDesk.Filter;
import org.driftward.ingest.contract.IntakeDesk.Line;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.IntakeDesk.State;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Word;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.SqlStatement;
import org.jdbi.v3.core.statement.StatementContext;

/** What was refused. Written once, never changed. */
final class Refusals {

  /** A refusal that was tried again shows what became of the latest try. */
  private static final String SELECT =
      """
      SELECT r.id, r.source, r.origin, r.target, r.received_at, r.content_type,
        length(r.bytes) AS size, r.faults,
        CASE WHEN EXISTS (SELECT FROM ingest.replay_waiting w WHERE w.refusal = r.id)
          THEN 'waiting'
          ELSE coalesce((SELECT o.outcome FROM ingest.replay_outcome o WHERE o.refusal = r.id
            ORDER BY o.replay DESC LIMIT 1), 'open') END AS state
      FROM ingest.refusal r
      """;

  private static final String IN_SIGHT =
      " AND (:all OR r.origin IN ('http/' || :account, 'file/' || :account))";

  private static final String NOT_BROUGHT_IN =
      " AND NOT EXISTS (SELECT FROM ingest.replay_outcome o"
          + " WHERE o.refusal = r.id AND o.outcome = 'accepted')";

  private Refusals() {}

  /** Keeps each once, however often the topic delivers it. */
  static void write(Handle handle, Collection<Rejection> rejections) {
    if (rejections.isEmpty()) {
      return;
    }
    var batch =
        handle.prepareBatch(
            """
            INSERT INTO ingest.refusal (id, origin, source, target, received_at, content_type,
              bytes, faults, rules, replay_of)
            VALUES (:id, :origin, :source, :target, :at, :type, :bytes, :faults, :rules, :replayOf)
            ON CONFLICT (id) DO NOTHING
            """);
    rejections.forEach(
        each ->
            batch
                .bind("id", each.id())
                .bind("origin", each.origin())
                .bind("source", each.source().word())
                .bind("target", each.target())
                .bind("at", each.receivedAt())
                .bind("type", each.contentType())
                .bind("bytes", Base64.getDecoder().decode(each.base64()))
                .bind("faults", Columns.faults(each.faults()))
                .bindArray("rules", String.class, rules(each))
                .bind("replayOf", each.replayOf())
                .add());
    batch.execute();
  }

  private static Collection<String> rules(Rejection rejection) {
    return rejection.faults().stream().map(Fault::rule).collect(Collectors.toSet());
  }

  static List<Line> list(Handle handle, Filter filter, Sight sight, int most) {
    var sql =
        SELECT
            + where(filter)
            + (filter.after() == null
                ? ""
                : " AND (r.received_at, r.id) < (SELECT a.received_at, a.id FROM ingest.refusal a"
                    + " WHERE a.id = :after)")
            + " ORDER BY r.received_at DESC, r.id DESC LIMIT :most";
    var query = bound(handle.createQuery(sql), filter, sight).bind("most", most);
    if (filter.after() != null) {
      query.bind("after", filter.after());
    }
    return query.map(Refusals::line).list();
  }

  private static String where(Filter filter) {
    return " WHERE r.replay_of IS NULL"
        + IN_SIGHT
        + (filter.open() ? NOT_BROUGHT_IN : "")
        + (filter.source() == null ? "" : " AND r.source = :source")
        + (filter.rule() == null ? "" : " AND r.rules @> ARRAY[:rule]::text[]")
        + (filter.from() == null ? "" : " AND r.received_at >= :from")
        + (filter.to() == null ? "" : " AND r.received_at < :to");
  }

  private static <S extends SqlStatement<S>> S bound(S statement, Filter filter, Sight sight) {
    statement.bind("all", sight.wards().all()).bind("account", sight.account());
    if (filter.source() != null) {
      statement.bind("source", filter.source().word());
    }
    if (filter.rule() != null) {
      statement.bind("rule", filter.rule());
    }
    if (filter.from() != null) {
      statement.bind("from", filter.from());
    }
    if (filter.to() != null) {
      statement.bind("to", filter.to());
    }
    return statement;
  }

  static Optional<Line> find(Handle handle, String id, Sight sight) {
    return handle
        .createQuery(SELECT + " WHERE r.id = :id" + IN_SIGHT)
        .bind("id", id)
        .bind("all", sight.wards().all())
        .bind("account", sight.account())
        .map(Refusals::line)
        .findOne();
  }

  static Bytes bytes(Handle handle, String id) {
    return handle
        .createQuery("SELECT bytes FROM ingest.refusal WHERE id = :id")
        .bind("id", id)
        .mapTo(byte[].class)
        .map(Bytes::of)
        .one();
  }

  /** Every rule that is broken by a refusal in sight. */
  static List<String> rules(Handle handle, Sight sight) {
    return handle
        .createQuery(
            "SELECT DISTINCT unnest(r.rules) AS rule FROM ingest.refusal r"
                + " WHERE r.replay_of IS NULL"
                + IN_SIGHT
                + " ORDER BY rule")
        .bind("all", sight.wards().all())
        .bind("account", sight.account())
        .mapTo(String.class)
        .list();
  }

  private static Line line(ResultSet row, StatementContext context) throws SQLException {
    return new Line(
        row.getString("id"),
        Word.parse(Source.class, row.getString("source")),
        row.getString("origin"),
        row.getString("target"),
        Columns.time(row, "received_at"),
        row.getString("content_type"),
        row.getLong("size"),
        Columns.faults(row, "faults"),
        Word.parse(State.class, row.getString("state")));
  }
}
