package org.driftward.ingest.core.files;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * A row for each record of RFC 4180: a line end between quotes belongs to the record, LF alone is
 * taken for CR LF. It only finds where a record ends; a CSV library reads it. Cutting first is what
 * lets a broken record be named by its line and left behind, and lets a restart begin anywhere.
 *
 * <p>Where a quote is never closed, the line it stands on is cut out as broken, and the next line
 * begins afresh: one stray quote costs one row, not the rest of the file.
 */
public final class RecordCutter implements Slice.Cutter {

  private static final byte QUOTE = '"';
  private static final byte LF = '\n';

  private final byte delimiter;

  /**
   * @param delimiter an ASCII character
   */
  public RecordCutter(char delimiter) {
    if (delimiter > 127 || delimiter == QUOTE || delimiter == LF || delimiter == '\r') {
      throw new IllegalArgumentException("the delimiter is a character of ASCII, and no quote");
    }
    this.delimiter = (byte) delimiter;
  }

  private enum At {
    FIELD_START,
    PLAIN,
    QUOTED,
    QUOTE_IN_QUOTED
  }

  @Override
  public List<Slice> cut(byte[] bytes, boolean last, int most) {
    var slices = new ArrayList<Slice>();
    int from = 0;
    while (from < bytes.length && slices.size() < most) {
      var slice = one(bytes, from, last);
      if (slice == null) {
        break;
      }
      slices.add(slice);
      from = slice.next();
    }
    return slices;
  }

  private @Nullable Slice one(byte[] bytes, int from, boolean last) {
    int bound = (int) Math.min(bytes.length, (long) from + LONGEST);
    var at = At.FIELD_START;
    int lines = 0;
    for (int i = from; i < bound; i++) {
      byte each = bytes[i];
      if (each == LF) {
        lines++;
        if (at != At.QUOTED) {
          return new Slice(from, LineCutter.withoutCr(bytes, from, i), i + 1, lines, true);
        }
      }
      at = after(at, each);
    }
    boolean mayGoOn = bound == bytes.length && !last;
    if (mayGoOn) {
      return null;
    }
    boolean ends = bound == bytes.length && at != At.QUOTED;
    return ends
        ? new Slice(from, LineCutter.withoutCr(bytes, from, bound), bound, lines + 1, true)
        : broken(bytes, from, bound);
  }

  private static Slice broken(byte[] bytes, int from, int bound) {
    int end = LineCutter.endOfLine(bytes, from);
    return end < bound
        ? new Slice(from, LineCutter.withoutCr(bytes, from, end), end + 1, 1, false)
        : new Slice(from, bound, bound, bound == bytes.length ? 1 : 0, false);
  }

  private At after(At at, byte each) {
    return switch (at) {
      case FIELD_START, PLAIN ->
          each == delimiter
              ? At.FIELD_START
              : each == QUOTE && at == At.FIELD_START ? At.QUOTED : At.PLAIN;
      case QUOTED -> each == QUOTE ? At.QUOTE_IN_QUOTED : At.QUOTED;
      case QUOTE_IN_QUOTED ->
          each == QUOTE ? At.QUOTED : each == delimiter ? At.FIELD_START : At.PLAIN;
    };
  }
}
