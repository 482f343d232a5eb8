package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.Optional;
import java.util.function.Consumer;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.FileImport.RejectedRow;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.jdbi.v3.core.Handle;

/** Uploaded files as their senders see them. Thread-safe. */
@Singleton
public class Imports {

  private static final int NEWEST = 20;
  private static final int AT_ONCE = 500;
  private static final String IN_SIGHT = "(:all OR by = :account)";

  private final IntakeStore database;

  public Imports(IntakeStore database) {
    this.database = database;
  }

  /** What became of a part. */
  public sealed interface Added {
    /** It is kept, or was kept before. */
    record Kept(FileImport now) implements Added {}

    /** It does not begin where the last one ended. */
    record Elsewhere(FileImport now) implements Added {}
  }

  /**
   * Begins a file, or finds the one that the same account began with the same key; then nothing of
   * {@code upload} counts.
   */
  public FileImport begin(Upload upload) {
    return database.transaction(
        handle -> {
          ImportRows.insert(handle, upload);
          return handle
              .createQuery(ImportRows.SELECT + "WHERE by = :by AND key = :key")
              .bind("by", upload.by())
              .bind("key", upload.key())
              .map(ImportRows::progress)
              .one();
        });
  }

  /** Adds bytes behind those that have arrived. A part that arrives twice is kept once. */
  public Added add(String id, long offset, byte[] bytes, boolean last) {
    return database.transaction(
        handle -> {
          var now = locked(handle, id);
          boolean known = offset + bytes.length <= now.received();
          if (now.complete() || !now.running() || (known && !last)) {
            return offset <= now.received() ? new Added.Kept(now) : new Added.Elsewhere(now);
          }
          if (offset != now.received()) {
            return new Added.Elsewhere(now);
          }
          ImportRows.append(handle, id, offset, bytes, last);
          return new Added.Kept(locked(handle, id));
        });
  }

  private static FileImport locked(Handle handle, String id) {
    return handle
        .createQuery(ImportRows.SELECT + "WHERE id = :id FOR UPDATE")
        .bind("id", id)
        .map(ImportRows::progress)
        .one();
  }

  /** Empty also if the account may not see it. */
  public Optional<FileImport> find(String id, Sight sight) {
    return database.read(
        handle ->
            handle
                .createQuery(ImportRows.SELECT + "WHERE id = :id AND " + IN_SIGHT)
                .bind("id", id)
                .bind("all", sight.wards().all())
                .bind("account", sight.account())
                .map(ImportRows::progress)
                .findOne());
  }

  public List<FileImport> newest(Sight sight) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    ImportRows.SELECT + "WHERE " + IN_SIGHT + " ORDER BY created_at DESC LIMIT :n")
                .bind("all", sight.wards().all())
                .bind("account", sight.account())
                .bind("n", NEWEST)
                .map(ImportRows::progress)
                .list());
  }

  /** Hands over every refused row in the order of the file, a few at a time in memory. */
  public void eachRejected(String id, Consumer<RejectedRow> taker) {
    database.transaction(
        handle -> {
          handle
              .createQuery(
                  "SELECT r.line, r.faults, r.bytes, i.content_type FROM ingest.import_row r"
                      + " JOIN ingest.import i ON i.id = r.import"
                      + " WHERE r.import = :id ORDER BY r.\"offset\"")
              .bind("id", id)
              .setFetchSize(AT_ONCE)
              .map(
                  (row, context) ->
                      new RejectedRow(
                          row.getLong("line"),
                          Columns.faults(row, "faults"),
                          new String(
                              row.getBytes("bytes"),
                              MediaCharset.of(row.getString("content_type")))))
              .forEach(taker);
          return id;
        });
  }
}
