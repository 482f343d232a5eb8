package org.driftward.ingest.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.IntakeDesk.Replay;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.IntakeDesk.State;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.contract.Word;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import org.jspecify.annotations.Nullable;

/** The journal of mending, and the queue of what is still to be replayed. */
final class Replays {

  private Replays() {}

  /** A replay to be done. */
  record Due(long id, String refusal, Received received, String by, WardScope wards) {
    @Override
    public String toString() {
      return "Due[" + id + "]";
    }
  }

  /**
   * @return false if one of the same refusal is waiting
   */
  static boolean ask(
      Handle handle, String refusal, @Nullable Bytes mended, Sight sight, Instant now) {
    // One waiting replay of a refusal at a time, also when two people ask in the same moment.
    handle
        .createQuery("SELECT pg_advisory_xact_lock(hashtextextended(:refusal, 0))::text")
        .bind("refusal", refusal)
        .mapTo(String.class)
        .list();
    boolean waiting =
        handle
            .createQuery(
                "SELECT EXISTS (SELECT FROM ingest.replay_waiting WHERE refusal = :refusal)")
            .bind("refusal", refusal)
            .mapTo(Boolean.class)
            .one();
    if (waiting) {
      return false;
    }
    handle
        .createUpdate(
            """
            WITH asked AS (
              INSERT INTO ingest.replay (refusal, at, by, wards, every_ward, mended)
              VALUES (:refusal, :at, :by, :wards, :all, :mended) RETURNING id, refusal)
            INSERT INTO ingest.replay_waiting (replay, refusal) SELECT id, refusal FROM asked
            """)
        .bind("refusal", refusal)
        .bind("at", now)
        .bind("by", sight.account())
        .bindArray("wards", String.class, sight.wards().wards())
        .bind("all", sight.wards().all())
        .bind("mended", mended == null ? null : mended.array())
        .execute();
    return true;
  }

  /** The oldest that no other process is at; its row is held to the end of the transaction. */
  static Optional<Due> next(Handle handle) {
    return handle
        .createQuery(
            """
            SELECT p.id, p.refusal, p.by, p.wards, p.every_ward,
              coalesce(p.mended, r.bytes) AS bytes, r.origin, r.source, r.target, r.content_type
            FROM ingest.replay_waiting w
              JOIN ingest.replay p ON p.id = w.replay
              JOIN ingest.refusal r ON r.id = p.refusal
            ORDER BY w.replay LIMIT 1 FOR UPDATE OF w SKIP LOCKED
            """)
        .map(Replays::due)
        .findOne();
  }

  private static Due due(ResultSet row, StatementContext context) throws SQLException {
    var refusal = row.getString("refusal");
    var received =
        new Received(
            row.getString("origin"),
            Word.parse(Source.class, row.getString("source")),
            row.getString("target"),
            row.getString("content_type"),
            row.getBytes("bytes"));
    return new Due(
        row.getLong("id"),
        refusal,
        // A replay that a crash repeats is refused under the same name again.
        received.asReplayOf(refusal).named("replay-" + row.getLong("id")),
        row.getString("by"),
        Columns.wards(row));
  }

  static void done(Handle handle, Due due, State state, List<Fault> faults, Instant now) {
    handle
        .createUpdate(
            "INSERT INTO ingest.replay_outcome (replay, refusal, at, outcome, faults)"
                + " VALUES (:id, :refusal, :at, :outcome, :faults)")
        .bind("id", due.id())
        .bind("refusal", due.refusal())
        .bind("at", now)
        .bind("outcome", state.word())
        .bind("faults", Columns.faults(faults))
        .execute();
    handle
        .createUpdate("DELETE FROM ingest.replay_waiting WHERE replay = :id")
        .bind("id", due.id())
        .execute();
  }

  static List<Replay> of(Handle handle, String refusal) {
    return handle
        .createQuery(
            """
            SELECT p.at, p.by, p.mended, coalesce(o.outcome, 'waiting') AS state,
              o.at AS done_at, o.faults
            FROM ingest.replay p LEFT JOIN ingest.replay_outcome o ON o.replay = p.id
            WHERE p.refusal = :refusal ORDER BY p.id DESC
            """)
        .bind("refusal", refusal)
        .map(
            (row, context) ->
                new Replay(
                    Columns.time(row, "at"),
                    row.getString("by"),
                    Columns.bytes(row, "mended"),
                    Word.parse(State.class, row.getString("state")),
                    Columns.timeOrNull(row, "done_at"),
                    Columns.faults(row, "faults")))
        .list();
  }
}
