package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.io.ByteArrayOutputStream;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.WardScope;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;
import org.jspecify.annotations.Nullable;

/**
 * Uploaded files as they are worked off: one batch is one transaction, which holds the file's row
 * so that no other process takes the same batch. Dies the process, PostgreSQL lets go of the row
 * and the batch begins anew. Thread-safe.
 */
@Singleton
public class ImportQueue {

  private final IntakeStore database;
  private final Clock clock;

  public ImportQueue(IntakeStore database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /**
   * A file that may go on.
   *
   * @param position of the first byte that is not dealt with
   * @param lines that were dealt with
   * @param mapping the name of how its header is read, or null for our own header
   * @param mappingText what that name meant when the file came
   * @param header the header's bytes, or null where it was not read yet
   */
  public record Job(
      String id,
      String name,
      String contentType,
      @Nullable String mapping,
      @Nullable String mappingText,
      String by,
      WardScope wards,
      Instant createdAt,
      long received,
      boolean complete,
      long position,
      long lines,
      @Nullable Bytes header) {

    @Override
    public String toString() {
      return "Job[" + id + "]";
    }
  }

  /** A row that is refused. */
  public record Broken(long offset, long line, Bytes bytes, List<Fault> faults) {
    @Override
    public String toString() {
      return "Broken[" + line + "]";
    }
  }

  /** What a batch came to. */
  public sealed interface Worked {

    /**
     * @param header the header, once it is known
     * @param read rows
     * @param finished whether this was the end of the file
     */
    record Moved(
        long position,
        long lines,
        @Nullable Bytes header,
        long read,
        long accepted,
        List<Broken> broken,
        boolean finished)
        implements Worked {}

    /** The rest of a row has not arrived yet. */
    record Starved() implements Worked {}

    /** Nothing of the file can be understood. */
    record Refused(List<Fault> faults) implements Worked {}
  }

  /** Reads what has arrived of a file. */
  public interface Arrived {
    /** At most {@code most} bytes from an offset on; fewer where no more have arrived. */
    byte[] read(long offset, int most);
  }

  /** Works at a file. */
  @FunctionalInterface
  public interface Worker {
    Worked work(Job job, Arrived arrived);
  }

  /**
   * Lets a worker deal with the next batch of the file that has waited longest.
   *
   * @return false if there was nothing to do
   * @throws RuntimeException what the worker throws; the batch then counts as not begun
   */
  public boolean work(Worker worker) {
    return database.transaction(
        handle -> {
          var job = next(handle);
          job.ifPresent(
              found -> {
                var worked =
                    worker.work(found, (offset, most) -> read(handle, found.id(), offset, most));
                keep(handle, found, worked);
              });
          return job.isPresent();
        });
  }

  private static Optional<Job> next(Handle handle) {
    return handle
        .createQuery(
            """
            SELECT id, name, content_type, mapping, mapping_text, by, wards, every_ward, created_at,
              received, complete, position, lines, header
            FROM ingest.import
            WHERE state = 'running' AND (received > starved OR complete)
            ORDER BY worked_at LIMIT 1 FOR UPDATE SKIP LOCKED
            """)
        .map(ImportQueue::job)
        .findOne();
  }

  private static Job job(ResultSet row, StatementContext context) throws SQLException {
    return new Job(
        row.getString("id"),
        row.getString("name"),
        row.getString("content_type"),
        row.getString("mapping"),
        row.getString("mapping_text"),
        row.getString("by"),
        Columns.wards(row),
        Columns.time(row, "created_at"),
        row.getLong("received"),
        row.getBoolean("complete"),
        row.getLong("position"),
        row.getLong("lines"),
        Columns.bytes(row, "header"));
  }

  private static byte[] read(Handle handle, String id, long offset, int most) {
    var out = new ByteArrayOutputStream();
    while (out.size() < most) {
      long from = offset + out.size();
      int wanted = most - out.size();
      var piece =
          handle
              .createQuery(
                  "SELECT substring(bytes FROM (:from - \"offset\" + 1)::int FOR :wanted)"
                      + " FROM ingest.import_part WHERE import = :id AND \"offset\" <= :from"
                      + " AND \"offset\" + length > :from")
              .bind("id", id)
              .bind("from", from)
              .bind("wanted", wanted)
              .mapTo(byte[].class)
              .findOne();
      if (piece.isEmpty()) {
        break;
      }
      out.writeBytes(piece.get());
    }
    return out.toByteArray();
  }

  private void keep(Handle handle, Job job, Worked worked) {
    if (worked instanceof Worked.Moved moved) {
      keepBroken(handle, job, moved.broken());
      move(handle, job, moved);
    } else if (worked instanceof Worked.Refused refused) {
      handle
          .createUpdate(
              "UPDATE ingest.import SET state = 'refused', faults = :faults,"
                  // The same file may come again, once the mapping is mended.
                  + " key = key || '/' || id WHERE id = :id")
          .bind("faults", Columns.faults(refused.faults()))
          .bind("id", job.id())
          .execute();
      dropParts(handle, job, Long.MAX_VALUE);
    } else {
      handle
          .createUpdate("UPDATE ingest.import SET starved = received WHERE id = :id")
          .bind("id", job.id())
          .execute();
    }
  }

  private void move(Handle handle, Job job, Worked.Moved moved) {
    var header = moved.header();
    handle
        .createUpdate(
            """
            UPDATE ingest.import SET position = :position, lines = :lines, header = :header,
              rows_read = rows_read + :read, accepted = accepted + :accepted,
              rejected = rejected + :rejected, worked_at = :at,
              state = CASE WHEN :finished THEN 'finished' ELSE state END
            WHERE id = :id
            """)
        .bind("position", moved.position())
        .bind("lines", moved.lines())
        .bind("header", header == null ? null : header.array())
        .bind("read", moved.read())
        .bind("accepted", moved.accepted())
        .bind("rejected", moved.broken().size())
        .bind("at", clock.instant())
        .bind("finished", moved.finished())
        .bind("id", job.id())
        .execute();
    dropParts(handle, job, moved.position());
  }

  private static void keepBroken(Handle handle, Job job, List<Broken> broken) {
    if (broken.isEmpty()) {
      return;
    }
    var batch =
        handle.prepareBatch(
            "INSERT INTO ingest.import_row (import, \"offset\", line, bytes, faults)"
                + " VALUES (:id, :offset, :line, :bytes, :faults)");
    broken.forEach(
        each ->
            batch
                .bind("id", job.id())
                .bind("offset", each.offset())
                .bind("line", each.line())
                .bind("bytes", each.bytes().array())
                .bind("faults", Columns.faults(each.faults()))
                .add());
    batch.execute();
  }

  /** What is dealt with is not needed any more: the disk holds only what waits. */
  private static void dropParts(Handle handle, Job job, long position) {
    handle
        .createUpdate(
            "DELETE FROM ingest.import_part"
                + " WHERE import = :id AND \"offset\" + length <= :position")
        .bind("id", job.id())
        .bind("position", position)
        .execute();
  }
}
