package org.driftward.ingest.hl7;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Map;
import java.util.Optional;

/**
 * Character sets by MSH-18, HL7 table 0211. Those whose bytes may look like the frame of MLLP
 * (UTF-16, UTF-32) cannot be used on it and are left out, as are those that switch by escape
 * sequences.
 */
final class Charsets {

  private static final Map<String, String> TABLE_0211 =
      Map.ofEntries(
          Map.entry("ASCII", "US-ASCII"),
          Map.entry("8859/1", "ISO-8859-1"),
          Map.entry("8859/2", "ISO-8859-2"),
          Map.entry("8859/3", "ISO-8859-3"),
          Map.entry("8859/4", "ISO-8859-4"),
          Map.entry("8859/5", "ISO-8859-5"),
          Map.entry("8859/6", "ISO-8859-6"),
          Map.entry("8859/7", "ISO-8859-7"),
          Map.entry("8859/8", "ISO-8859-8"),
          Map.entry("8859/9", "ISO-8859-9"),
          Map.entry("8859/15", "ISO-8859-15"),
          Map.entry("GB 18030-2000", "GB18030"),
          Map.entry("KS X 1001", "EUC-KR"),
          Map.entry("BIG-5", "Big5"),
          Map.entry("UNICODE", "UTF-8"),
          Map.entry("UNICODE UTF-8", "UTF-8"),
          // Not in the table, and what many senders write.
          Map.entry("UTF-8", "UTF-8"));

  private Charsets() {}

  /**
   * @param name as MSH-18 has it; empty means ASCII, of which UTF-8 is the superset that cannot be
   *     mistaken for another
   */
  static Optional<Charset> find(String name) {
    return name.isEmpty()
        ? Optional.of(StandardCharsets.UTF_8)
        : Optional.ofNullable(TABLE_0211.get(name)).map(Charset::forName);
  }

  /**
   * @throws CharacterCodingException if the bytes are no text of the character set: a name must not
   *     come out as another name
   */
  static String decode(byte[] bytes, Charset charset) throws CharacterCodingException {
    return charset
        .newDecoder()
        .onMalformedInput(CodingErrorAction.REPORT)
        .onUnmappableCharacter(CodingErrorAction.REPORT)
        .decode(ByteBuffer.wrap(bytes))
        .toString();
  }
}
