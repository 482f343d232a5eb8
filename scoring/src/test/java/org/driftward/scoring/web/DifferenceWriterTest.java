package org.driftward.scoring.web;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.time.Instant;
import java.util.List;
import org.driftward.scoring.core.compare.Difference;
import org.junit.jupiter.api.Test;

/** Quoting and line ends by RFC 4180. */
class DifferenceWriterTest {

  private static final List<Difference> TWO =
      List.of(
          new Difference("V-1", "A-1", Instant.EPOCH, "due", null, "he said \"at once\""),
          new Difference("=V-2", "A-2", Instant.EPOCH, "score:news2", "3, low", "4, low"));

  private static String written(DifferenceWriter writer, List<Difference> some) throws IOException {
    var out = new ByteArrayOutputStream();
    writer.write(some.iterator(), out);
    return out.toString(UTF_8);
  }

  @Test
  void shouldWriteATableThatNoSpreadsheetRuns() throws IOException {
    assertThat(written(DifferenceWriter::csv, TWO))
        .isEqualTo(
            "encounter,assessment,asOf,what,before,after\r\n"
                + "V-1,A-1,1970-01-01T00:00:00Z,due,,\"he said \"\"at once\"\"\"\r\n"
                + "'=V-2,A-2,1970-01-01T00:00:00Z,score:news2,\"3, low\",\"4, low\"\r\n");
  }

  @Test
  void shouldWriteAnArray() throws IOException {
    assertThat(written(DifferenceWriter::json, TWO))
        .startsWith("[{\"encounter\":\"V-1\"")
        .contains("},{\"encounter\":\"=V-2\"")
        .endsWith("}]");
    assertThat(written(DifferenceWriter::json, List.of())).isEqualTo("[]");
  }
}
