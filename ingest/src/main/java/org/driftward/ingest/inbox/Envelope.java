package org.driftward.ingest.inbox;

import java.nio.charset.StandardCharsets;
import java.util.Locale;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.fhir.FhirGate;
import org.driftward.ingest.hl7.Hl7Door;
import org.driftward.ingest.web.AssessmentGate;
import org.driftward.ingest.web.EncounterGate;

/**
 * What a record of the inbox says about itself in its headers: {@code content-type} (without it
 * JSON), {@code feed} (who sends, for people and for the mapping of codes) and {@code kind} ({@code
 * assessment} unless it is {@code encounter}, whose number is then the record's key).
 */
final class Envelope {

  static final String CONTENT_TYPE = "content-type";
  static final String FEED = "feed";
  static final String KIND = "kind";

  /** No gate serves it. */
  static final String NOWHERE = "driftward.inbox";

  private static final String JSON = "application/json";
  private static final int LONGEST_FEED = 100;

  private final ConsumerRecord<String, byte[]> inbox;

  private Envelope(ConsumerRecord<String, byte[]> inbox) {
    this.inbox = inbox;
  }

  /** As the gates take it; a kind or content that nobody takes is sent to {@link #NOWHERE}. */
  static Received open(ConsumerRecord<String, byte[]> inbox) {
    var envelope = new Envelope(inbox);
    var type = envelope.header(CONTENT_TYPE, JSON);
    var bytes = inbox.value() == null ? new byte[0] : inbox.value();
    return envelope.received(mediaType(type), type, bytes);
  }

  private Received received(String mediaType, String type, byte[] bytes) {
    return switch (mediaType) {
      case JSON -> new Received(origin(), Source.BEDSIDE, jsonTarget(), JSON, bytes);
      case "application/fhir+json", "application/fhir+xml" ->
          new Received(origin(), Source.FHIR, FhirGate.EITHER, mediaType, bytes);
      case Hl7Door.MEDIA_TYPE ->
          new Received(origin(), Source.HL7, Hl7Door.TARGET, mediaType, bytes);
      default -> new Received(origin(), Source.BEDSIDE, NOWHERE, plain(type), bytes);
    };
  }

  private String jsonTarget() {
    var key = inbox.key();
    return switch (header(KIND, "assessment")) {
      case "assessment" -> AssessmentGate.TARGET;
      case "encounter" -> key == null ? NOWHERE : EncounterGate.target(key);
      default -> NOWHERE;
    };
  }

  /** Nobody has proved who it is; the broker lets in only those who may write the inbox. */
  private String origin() {
    return "kafka/" + plain(header(FEED, "unnamed"));
  }

  private String header(String name, String otherwise) {
    var header = inbox.headers().lastHeader(name);
    return header == null || header.value() == null
        ? otherwise
        : new String(header.value(), StandardCharsets.UTF_8).strip();
  }

  private static String mediaType(String type) {
    return type.split(";", 2)[0].strip().toLowerCase(Locale.ROOT);
  }

  /** It becomes a key and a label; a stranger must not make anything else of it. */
  private static String plain(String text) {
    var printable = text.replaceAll("\\p{Cntrl}", "?");
    return printable.length() <= LONGEST_FEED ? printable : printable.substring(0, LONGEST_FEED);
  }
}
