package org.driftward.ingest.core.files;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.junit.jupiter.api.Test;

/** The examples of RFC 4180, section 2, and what it does not foresee. */
class RecordCutterTest {

  private static final RecordCutter CUTTER = new RecordCutter(',');

  @Test
  void shouldCutAtCrLf() {
    // RFC 4180, section 2, rule 1.
    assertThat(cut("aaa,bbb,ccc\r\nzzz,yyy,xxx\r\n")).containsExactly("aaa,bbb,ccc", "zzz,yyy,xxx");
  }

  @Test
  void shouldTakeTheLastRecordWithoutALineEnd() {
    // Rule 2.
    assertThat(cut("aaa,bbb,ccc\r\nzzz,yyy,xxx")).containsExactly("aaa,bbb,ccc", "zzz,yyy,xxx");
  }

  @Test
  void shouldKeepALineEndBetweenQuotes() {
    // Rule 6.
    assertThat(cut("\"aaa\",\"b\r\nbb\",\"ccc\"\r\nzzz,yyy,xxx"))
        .containsExactly("\"aaa\",\"b\r\nbb\",\"ccc\"", "zzz,yyy,xxx");
  }

  @Test
  void shouldTakeADoubledQuoteForAQuote() {
    // Rule 7.
    assertThat(cut("\"aaa\",\"b\"\"\r\nbb\",\"ccc\"\r\nx"))
        .containsExactly("\"aaa\",\"b\"\"\r\nbb\",\"ccc\"", "x");
  }

  @Test
  void shouldTakeLfAlone() {
    // Common practice, no source.
    assertThat(cut("a,b\nc,d\n")).containsExactly("a,b", "c,d");
  }

  @Test
  void shouldTakeAQuoteInsideAFieldForACharacter() {
    // Rule 5 forbids it; a name that holds one must not swallow the next row.
    assertThat(cut("a 5\" tube,b\r\nc,d")).containsExactly("a 5\" tube,b", "c,d");
  }

  @Test
  void shouldLoseOneRowOnlyToAQuoteThatIsNeverClosed() {
    var slices = CUTTER.cut("a,\"b\r\nc,d\r\ne,f".getBytes(UTF_8), true, 10);

    assertThat(slices).extracting(Slice::whole).containsExactly(false, true, true);
    assertThat(cut("a,\"b\r\nc,d\r\ne,f")).containsExactly("a,\"b", "c,d", "e,f");
  }

  @Test
  void shouldLeaveARowThatMayGoOnForTheNextCall() {
    var bytes = "a,b\r\nc,\"d\r\n".getBytes(UTF_8);

    assertThat(CUTTER.cut(bytes, false, 10)).extracting(Slice::next).containsExactly(5);
  }

  @Test
  void shouldCountTheLinesOfARow() {
    var slices = CUTTER.cut("\"a\r\nb\",c\r\nd".getBytes(UTF_8), true, 10);

    assertThat(slices).extracting(Slice::lines).containsExactly(2, 1);
  }

  @Test
  void shouldBreakARowWithoutMeasure() {
    var line = "x".repeat(Slice.Cutter.LONGEST + 10) + "\r\ny";

    var slices = CUTTER.cut(line.getBytes(UTF_8), true, 10);

    assertThat(slices).extracting(Slice::whole).containsExactly(false, true, true);
    assertThat(slices.get(0).to()).isEqualTo(Slice.Cutter.LONGEST);
  }

  @Test
  void shouldCutTheSameWhereverThePartsEnd() {
    var file = "id,note\r\n1,\"two\r\nlines, \"\"quoted\"\"\"\r\n2,é\r\n\r\n3,x".getBytes(UTF_8);
    var whole = cut(file, file.length);

    for (int part = 1; part < file.length; part++) {
      assertThat(cut(file, part)).as("parts of %d bytes", part).isEqualTo(whole);
    }
  }

  private static List<String> cut(String file) {
    var bytes = file.getBytes(UTF_8);
    return cut(bytes, bytes.length);
  }

  /** As the import does: more bytes as long as the rest is no whole row. */
  private static List<String> cut(byte[] file, int part) {
    var rows = new ArrayList<String>();
    int from = 0;
    int to = Math.min(part, file.length);
    while (from < file.length) {
      var rest = Arrays.copyOfRange(file, from, to);
      var slices = CUTTER.cut(rest, to == file.length, 1);
      if (slices.isEmpty()) {
        to = Math.min(to + part, file.length);
        continue;
      }
      var slice = slices.get(0);
      rows.add(new String(rest, slice.from(), slice.to() - slice.from(), UTF_8));
      from += slice.next();
      to = Math.max(to, Math.min(from + 1, file.length));
    }
    return rows;
  }
}
