package org.driftward.dashboard.screen;

import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.util.Arrays;
import java.util.HexFormat;
import java.util.Locale;
import java.util.Optional;
import org.driftward.ingest.contract.Bytes;
import org.jspecify.annotations.Nullable;

/**
 * Bytes as a person can read and mend them: as text where they are text, as hexadecimal digits
 * always.
 *
 * @param text or null where the bytes are no text
 * @param mendable whether the text, sent back from a form untouched, gives the very same bytes
 * @param hex sixteen bytes in a line: place, digits, and the characters they stand for in ASCII
 * @param digits the hexadecimal digits alone, for mending
 * @param whole whether everything is shown
 * @param encoding of the text
 */
public record BytesView(
    @Nullable String text,
    boolean mendable,
    String hex,
    String digits,
    boolean whole,
    String encoding) {

  /** More than a person reads, and little enough for a page. */
  private static final int MOST = 64 << 10;

  private static final int IN_A_LINE = 16;
  private static final HexFormat SPACED = HexFormat.ofDelimiter(" ");

  /**
   * @param contentType names the encoding; UTF-8 if it does not, and one byte for each character
   *     where that fails, as messages of HL7 often come
   */
  public static BytesView of(Bytes bytes, String contentType) {
    var all = bytes.array();
    var shown = all.length > MOST ? Arrays.copyOf(all, MOST) : all;
    boolean whole = shown.length == all.length;
    var charset = charset(shown, whole, contentType);
    var text = decode(shown, charset).filter(BytesView::readable);
    boolean mendable =
        whole && text.map(words -> Arrays.equals(all, mended(words, bytes, charset))).orElse(false);
    return new BytesView(
        text.orElse(null), mendable, dump(shown), SPACED.formatHex(shown), whole, charset.name());
  }

  /**
   * What a form sends back, as bytes: a form ends its lines with CR LF, whatever stood there
   * before, so the line ends of the original are put back.
   */
  public static byte[] mended(String fromForm, Bytes original, String contentType) {
    var all = original.array();
    return mended(fromForm, original, charset(all, true, contentType));
  }

  private static byte[] mended(String fromForm, Bytes original, Charset charset) {
    var was = new String(original.array(), charset);
    var lines = fromForm.replace("\r\n", "\n").replace('\r', '\n');
    return lines.replace("\n", lineEnd(was)).getBytes(charset);
  }

  private static String lineEnd(String text) {
    if (text.contains("\r\n")) {
      return "\r\n";
    }
    return text.indexOf('\r') >= 0 ? "\r" : "\n";
  }

  /**
   * Bytes from hexadecimal digits; blanks between them do not matter.
   *
   * @return empty if they are none
   */
  public static Optional<byte[]> fromDigits(String digits) {
    try {
      return Optional.of(HexFormat.of().parseHex(digits.replaceAll("\\s", "")));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static Charset charset(byte[] bytes, boolean whole, String contentType) {
    var named = named(contentType);
    if (named.isPresent()) {
      return named.get();
    }
    // A cut may fall into the middle of a character.
    boolean utf8 = !whole || decode(bytes, StandardCharsets.UTF_8).isPresent();
    return utf8 ? StandardCharsets.UTF_8 : StandardCharsets.ISO_8859_1;
  }

  private static Optional<Charset> named(String contentType) {
    int at = contentType.toLowerCase(Locale.ROOT).indexOf("charset=");
    if (at < 0) {
      return Optional.empty();
    }
    var name = contentType.substring(at + "charset=".length()).split(";", 2)[0];
    try {
      return Optional.of(Charset.forName(name.replace("\"", "").strip()));
    } catch (IllegalArgumentException e) {
      return Optional.empty();
    }
  }

  private static Optional<String> decode(byte[] bytes, Charset charset) {
    try {
      return Optional.of(
          charset
              .newDecoder()
              .onMalformedInput(CodingErrorAction.REPORT)
              .onUnmappableCharacter(CodingErrorAction.REPORT)
              .decode(ByteBuffer.wrap(bytes))
              .toString());
    } catch (CharacterCodingException e) {
      return Optional.empty();
    }
  }

  private static boolean readable(String text) {
    return text.chars()
        .noneMatch(each -> Character.isISOControl(each) && "\r\n\t".indexOf(each) < 0);
  }

  private static String dump(byte[] bytes) {
    var out = new StringBuilder();
    for (int from = 0; from < bytes.length; from += IN_A_LINE) {
      int to = Math.min(from + IN_A_LINE, bytes.length);
      out.append("%06x  %-47s  ".formatted(from, SPACED.formatHex(bytes, from, to)));
      for (int i = from; i < to; i++) {
        boolean printable = bytes[i] >= ' ' && bytes[i] < 127;
        out.append(printable ? (char) bytes[i] : '·');
      }
      out.append('\n');
    }
    return out.toString();
  }
}
