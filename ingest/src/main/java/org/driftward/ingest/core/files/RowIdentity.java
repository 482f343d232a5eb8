package org.driftward.ingest.core.files;

import java.nio.charset.StandardCharsets;
import java.util.SortedMap;
import java.util.UUID;

/**
 * Which assessment a row is that names none: what it says is what it is. The same row again, in a
 * repeated file or behind a crash, is the same assessment; a row that says something else is
 * another one, so a correction must come with the {@code id} and a higher {@code revision}.
 */
public final class RowIdentity {

  private RowIdentity() {}

  /**
   * @param content what the row says, by column; the order of columns in the file does not matter
   */
  static String of(SortedMap<String, String> content) {
    var text = new StringBuilder();
    content.forEach(
        (column, cell) ->
            text.append(column.length())
                .append(':')
                .append(column)
                .append(cell.length())
                .append(':')
                .append(cell));
    return of(text.toString().getBytes(StandardCharsets.UTF_8));
  }

  /** Of a row that is one JSON object. */
  public static String of(byte[] row) {
    return "file-" + UUID.nameUUIDFromBytes(row);
  }
}
