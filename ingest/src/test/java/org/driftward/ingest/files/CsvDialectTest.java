package org.driftward.ingest.files;

import static java.nio.charset.StandardCharsets.ISO_8859_1;
import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import org.driftward.ingest.core.files.FileMapping;
import org.driftward.ingest.files.RowText.BrokenRowException;
import org.junit.jupiter.api.Test;

/** One record of RFC 4180 as cells, by the examples of its section 2. */
class CsvDialectTest {

  @Test
  void shouldReadPlainAndQuotedFields() throws BrokenRowException {
    // Rules 1 and 5.
    assertThat(RowText.cells("aaa,bbb,ccc", FileMapping.OWN)).containsExactly("aaa", "bbb", "ccc");
    assertThat(RowText.cells("\"aaa\",\"bbb\",\"ccc\"", FileMapping.OWN))
        .containsExactly("aaa", "bbb", "ccc");
  }

  @Test
  void shouldKeepLineEndsAndQuotesBetweenQuotes() throws BrokenRowException {
    // Rules 6 and 7.
    assertThat(RowText.cells("\"aaa\",\"b\r\nbb\",\"ccc\"", FileMapping.OWN))
        .containsExactly("aaa", "b\r\nbb", "ccc");
    assertThat(RowText.cells("\"aaa\",\"b\"\"bb\",\"ccc\"", FileMapping.OWN))
        .containsExactly("aaa", "b\"bb", "ccc");
  }

  @Test
  void shouldKeepBlanks() throws BrokenRowException {
    // Rule 4: spaces are part of a field.
    assertThat(RowText.cells("a , b,", FileMapping.OWN)).containsExactly("a ", " b", "");
  }

  @Test
  void shouldRefuseTextBehindAClosedQuote() {
    assertThatExceptionOfType(BrokenRowException.class)
        .isThrownBy(() -> RowText.cells("\"aaa\"x,b", FileMapping.OWN));
  }

  @Test
  void shouldLeaveAByteOrderMarkOut() throws BrokenRowException {
    assertThat(RowText.decode("\uFEFFid,by".getBytes(UTF_8), UTF_8)).isEqualTo("id,by");
  }

  @Test
  void shouldRefuseBytesThatAreNoText() {
    assertThatExceptionOfType(BrokenRowException.class)
        .isThrownBy(() -> RowText.decode("é".getBytes(ISO_8859_1), UTF_8));
  }
}
