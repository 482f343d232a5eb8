package org.driftward.ingest.store;

import java.sql.ResultSet;
import java.sql.SQLException;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.Word;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** The rows of an import and its parts. */
final class ImportRows {

  static final String SELECT =
      "SELECT id, name, by, created_at, state, length, received, complete, position, rows_read,"
          + " accepted, rejected, faults FROM ingest.import ";

  private ImportRows() {}

  static FileImport progress(ResultSet row, StatementContext context) throws SQLException {
    long length = row.getLong("length");
    boolean unknown = row.wasNull();
    return new FileImport(
        row.getString("id"),
        row.getString("name"),
        row.getString("by"),
        Columns.time(row, "created_at"),
        Word.parse(FileImport.State.class, row.getString("state")),
        unknown ? null : length,
        row.getLong("received"),
        row.getBoolean("complete"),
        row.getLong("position"),
        row.getLong("rows_read"),
        row.getLong("accepted"),
        row.getLong("rejected"),
        Columns.faults(row, "faults"));
  }

  static void insert(Handle handle, Upload upload) {
    handle
        .createUpdate(
            """
            INSERT INTO ingest.import
              (id, key, name, content_type, mapping, mapping_text, by, wards, every_ward,
               created_at, state, length, worked_at)
            VALUES (:id, :key, :name, :contentType, :mapping, :mappingText, :by, :wards, :all,
               :at, 'running', :length, :at)
            ON CONFLICT (by, key) DO NOTHING
            """)
        .bind("id", upload.id())
        .bind("key", upload.key())
        .bind("name", upload.name())
        .bind("contentType", upload.contentType())
        .bind("mapping", upload.mapping())
        .bind("mappingText", upload.mappingText())
        .bind("by", upload.by())
        .bindArray("wards", String.class, upload.wards().wards())
        .bind("all", upload.wards().all())
        .bind("at", upload.createdAt())
        .bind("length", upload.length())
        .execute();
  }

  static void append(Handle handle, String id, long offset, byte[] bytes, boolean last) {
    if (bytes.length > 0) {
      handle
          .createUpdate(
              "INSERT INTO ingest.import_part (import, \"offset\", length, bytes)"
                  + " VALUES (:id, :offset, :length, :bytes)")
          .bind("id", id)
          .bind("offset", offset)
          .bind("length", bytes.length)
          .bind("bytes", bytes)
          .execute();
    }
    handle
        .createUpdate(
            "UPDATE ingest.import SET received = received + :length, complete = :last"
                + " WHERE id = :id")
        .bind("id", id)
        .bind("length", bytes.length)
        .bind("last", last)
        .execute();
  }
}
