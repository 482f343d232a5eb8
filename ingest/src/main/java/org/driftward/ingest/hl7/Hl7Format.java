package org.driftward.ingest.hl7;

import ca.uhn.hl7v2.DefaultHapiContext;
import ca.uhn.hl7v2.HL7Exception;
import ca.uhn.hl7v2.HapiContext;
import ca.uhn.hl7v2.model.Group;
import ca.uhn.hl7v2.model.Message;
import ca.uhn.hl7v2.model.Segment;
import ca.uhn.hl7v2.parser.GenericModelClassFactory;
import ca.uhn.hl7v2.parser.PipeParser;
import ca.uhn.hl7v2.validation.impl.ValidationContextFactory;
import java.math.BigInteger;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.security.SecureRandom;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.core.Rule;

/**
 * Bytes to message, by the HL7 v2 library, in the delimited encoding ("pipes and hats"). The
 * generic model serves every version from 2.3 to 2.8 and every local segment alike. Thread-safe.
 */
final class Hl7Format {

  /** The library's time for a message grows with the square of this. */
  static final int MOST_SEGMENTS = 2_000;

  private static final SecureRandom RANDOM = new SecureRandom();

  private final HapiContext context = new DefaultHapiContext(new GenericModelClassFactory());

  Hl7Format() {
    context.setValidationContext(ValidationContextFactory.noValidation());
    context.getParserConfiguration().setAllowUnknownVersions(true);
    // The library's own counter is a file. MSH-10 held 20 characters until version 2.6.
    context.getParserConfiguration().setIdGenerator(() -> new BigInteger(96, RANDOM).toString(36));
  }

  /**
   * @throws NotHl7Exception with the fault that says why; it may quote the input
   */
  Hl7Message read(byte[] bytes) throws NotHl7Exception {
    var text = text(bytes);
    if (text.chars().filter(character -> character == '\r').count() > MOST_SEGMENTS) {
      throw new NotHl7Exception("", Rule.TOO_MANY, "more than " + MOST_SEGMENTS + " segments");
    }
    try {
      var message = parser().parse(text);
      return message(message);
    } catch (HL7Exception | RuntimeException e) {
      // The library throws what it likes when the header is broken.
      throw new NotHl7Exception("/MSH/1", Rule.MALFORMED_RESOURCE, "not a message of HL7 v2");
    }
  }

  /**
   * A message that stands for one that cannot be read, with as much of its header as the answer
   * needs: who sent it, and its control id.
   */
  Hl7Message substitute(byte[] bytes) {
    var header = headerOf(bytes);
    var fields =
        header.startsWith("MSH") && header.length() > 3
            ? split(header, header.charAt(3))
            : new String[0];
    var text =
        "MSH|^~\\&|%s|%s|||||ACK|%s|P|2.5"
            .formatted(plain(fields, 2), plain(fields, 3), plain(fields, 9));
    try {
      return message(parser().parse(text));
    } catch (HL7Exception e) {
      throw new IllegalStateException("our own header cannot be read", e);
    }
  }

  /** Nothing that could be taken for syntax. */
  private static String plain(String[] fields, int index) {
    var value = fields.length > index ? fields[index].replaceAll("[^A-Za-z0-9_.:/ -]", "") : "";
    return value.length() <= 50 ? value : value.substring(0, 50);
  }

  /** A parser is cheap; it remembers nothing of a message. */
  private PipeParser parser() {
    return new PipeParser(context);
  }

  /** Senders that end segments with line feeds are common, and cannot be misunderstood. */
  private static String text(byte[] bytes) throws NotHl7Exception {
    var name = charsetOf(bytes);
    var charset =
        Charsets.find(name)
            .orElseThrow(
                () ->
                    new NotHl7Exception(
                        "/MSH/1/18", Rule.UNKNOWN_WORD, "no character set of ours: " + name));
    try {
      var text = Charsets.decode(bytes, charset);
      return text.replace("\r\n", "\r").replace('\n', '\r');
    } catch (CharacterCodingException e) {
      throw new NotHl7Exception(
          "/MSH/1/18", Rule.MALFORMED_TEXT, "the bytes are no text in " + charset.name());
    }
  }

  /** The header is ASCII up to MSH-18, whatever the character set. */
  private static String charsetOf(byte[] bytes) {
    var header = headerOf(bytes);
    var fields = header.length() < 4 ? new String[0] : split(header, header.charAt(3));
    if (fields.length < 18) {
      return "";
    }
    var first = fields[17].split("~", -1)[0];
    return first.strip();
  }

  static String headerOf(byte[] bytes) {
    var text = new String(bytes, StandardCharsets.ISO_8859_1);
    int end = text.indexOf('\r');
    int other = text.indexOf('\n');
    int first = end < 0 ? other : other < 0 ? end : Math.min(end, other);
    return first < 0 ? text : text.substring(0, first);
  }

  /** MSH-n is element n - 1, because MSH-1 is the separator itself. */
  static String[] split(String header, char separator) {
    return header.split(java.util.regex.Pattern.quote(String.valueOf(separator)), -1);
  }

  private static Hl7Message message(Message message) throws HL7Exception {
    var segments = new ArrayList<Hl7Segment>();
    var counts = new HashMap<String, Integer>();
    collect(message, segments, counts);
    return new Hl7Message(message, Hl7Message.Header.of(segments.get(0)), segments);
  }

  private static void collect(Group group, List<Hl7Segment> into, Map<String, Integer> counts)
      throws HL7Exception {
    for (var name : group.getNames()) {
      for (var structure : group.getAll(name)) {
        if (structure instanceof Segment segment) {
          var plain = segment.getName();
          into.add(new Hl7Segment(plain, counts.merge(plain, 1, Integer::sum), segment));
        } else if (structure instanceof Group inner) {
          collect(inner, into, counts);
        }
      }
    }
  }

  /** The bytes are no message that can be read. */
  static final class NotHl7Exception extends Exception {
    private static final long serialVersionUID = 1L;

    private final transient Fault fault;

    NotHl7Exception(String pointer, Rule rule, String detail) {
      super(detail);
      this.fault = new Fault(pointer, rule.word(), detail);
    }

    Fault fault() {
      return fault;
    }
  }
}
