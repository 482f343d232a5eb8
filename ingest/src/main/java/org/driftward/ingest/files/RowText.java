package org.driftward.ingest.files;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.driftward.ingest.core.files.FileMapping;

/** The bytes of one row as text and as cells. */
final class RowText {

  private static final String BYTE_ORDER_MARK = "\uFEFF";

  private RowText() {}

  /** A row that cannot be read. The message says why, never what stands in it. */
  static final class BrokenRowException extends Exception {
    private static final long serialVersionUID = 1L;

    BrokenRowException(String message) {
      super(message);
    }
  }

  /** Whether rows of this encoding can be cut by their ASCII bytes. */
  static boolean supports(Charset charset) {
    return charset.equals(StandardCharsets.UTF_8)
        || charset.equals(StandardCharsets.ISO_8859_1)
        || charset.equals(StandardCharsets.US_ASCII)
        || charset.name().startsWith("windows-125");
  }

  static String decode(byte[] row, Charset charset) throws BrokenRowException {
    try {
      var text =
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(row))
              .toString();
      return text.startsWith(BYTE_ORDER_MARK) ? text.substring(1) : text;
    } catch (CharacterCodingException e) {
      throw new BrokenRowException("these bytes are no text in " + charset.name());
    }
  }

  /** The cells of one record of RFC 4180. Blanks belong to a cell; an empty one is absent. */
  static List<String> cells(String row, FileMapping mapping) throws BrokenRowException {
    var format =
        CSVFormat.RFC4180
            .builder()
            .setDelimiter(mapping.delimiter())
            .setIgnoreEmptyLines(false)
            .get();
    try (var parser = CSVParser.parse(row, format)) {
      var records = parser.getRecords();
      if (records.size() != 1) {
        throw new BrokenRowException("this is not one row");
      }
      return records.get(0).toList();
    } catch (IOException | UncheckedIOException e) {
      throw new BrokenRowException("a quote stands where none may");
    }
  }
}
