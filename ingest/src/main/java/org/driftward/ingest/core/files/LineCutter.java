package org.driftward.ingest.core.files;

import java.util.ArrayList;
import java.util.List;

/** A row for each line, ended by LF or CR LF. Right for every encoding that holds ASCII. */
public final class LineCutter implements Slice.Cutter {

  private static final byte LF = '\n';
  private static final byte CR = '\r';

  @Override
  public List<Slice> cut(byte[] bytes, boolean last, int most) {
    var slices = new ArrayList<Slice>();
    int from = 0;
    while (from < bytes.length && slices.size() < most) {
      int end = endOfLine(bytes, from);
      if (end < bytes.length) {
        slices.add(new Slice(from, withoutCr(bytes, from, end), end + 1, 1, true));
      } else if (bytes.length - from > LONGEST) {
        slices.add(new Slice(from, from + LONGEST, from + LONGEST, 0, false));
      } else if (last) {
        slices.add(new Slice(from, withoutCr(bytes, from, end), end, 1, true));
      } else {
        break;
      }
      from = slices.get(slices.size() - 1).next();
    }
    return slices;
  }

  /** Where the line that holds {@code at} ends, or the end of the bytes. */
  static int endOfLine(byte[] bytes, int at) {
    int end = at;
    while (end < bytes.length && bytes[end] != LF) {
      end++;
    }
    return end;
  }

  static int withoutCr(byte[] bytes, int from, int end) {
    return end > from && bytes[end - 1] == CR ? end - 1 : end;
  }
}
