package org.driftward.ingest.store;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.List;
import java.util.Set;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.WardScope;
import org.jspecify.annotations.Nullable;

/** How our records lie in columns. */
final class Columns {

  private static final JsonFormat<Fault[]> FAULTS = JsonFormat.of(Fault[].class);

  private Columns() {}

  static Instant time(ResultSet row, String column) throws SQLException {
    return row.getObject(column, OffsetDateTime.class).toInstant();
  }

  static @Nullable Instant timeOrNull(ResultSet row, String column) throws SQLException {
    var time = row.getObject(column, OffsetDateTime.class);
    return time == null ? null : time.toInstant();
  }

  static @Nullable Bytes bytes(ResultSet row, String column) throws SQLException {
    var bytes = row.getBytes(column);
    return bytes == null ? null : Bytes.of(bytes);
  }

  static List<Fault> faults(ResultSet row, String column) throws SQLException {
    var text = row.getString(column);
    return text == null ? List.of() : List.of(FAULTS.read(text.getBytes(StandardCharsets.UTF_8)));
  }

  static String faults(List<Fault> faults) {
    return new String(FAULTS.write(faults.toArray(Fault[]::new)), StandardCharsets.UTF_8);
  }

  static WardScope wards(ResultSet row) throws SQLException {
    var wards = (String[]) row.getArray("wards").getArray();
    return new WardScope(Set.of(wards), row.getBoolean("every_ward"));
  }
}
