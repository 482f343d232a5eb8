package org.driftward.ingest.fhir;

import ca.uhn.fhir.context.FhirContext;
import ca.uhn.fhir.parser.DataFormatException;
import ca.uhn.fhir.parser.IParser;
import ca.uhn.fhir.parser.StrictErrorHandler;
import jakarta.inject.Singleton;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.util.function.BiFunction;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Resource;
import org.jspecify.annotations.Nullable;

/** FHIR R4 as JSON or XML. A resource with an element that R4 does not know is no resource. */
@Singleton
final class FhirFormat {

  static final String JSON = "application/fhir+json";
  static final String XML = "application/fhir+xml";

  private final FhirContext context = FhirContext.forR4Cached();

  /**
   * @throws NotThisResourceException whose message may quote the input: for the sender, not for
   *     logs
   */
  <T extends Resource> T read(Class<T> type, @Nullable String mediaType, byte[] body) {
    return read(type.getSimpleName(), mediaType, body, (by, text) -> by.parseResource(type, text));
  }

  /**
   * A Bundle or an Observation, as the body says itself.
   *
   * @throws NotThisResourceException likewise
   */
  Resource readEither(@Nullable String mediaType, byte[] body) {
    return read(
        "Bundle or Observation",
        mediaType,
        body,
        (by, text) -> {
          var resource = by.parseResource(text);
          if (resource instanceof Bundle || resource instanceof Observation) {
            return (Resource) resource;
          }
          throw new DataFormatException("it is another resource");
        });
  }

  private <T> T read(
      String what, @Nullable String mediaType, byte[] body, BiFunction<IParser, String, T> parse) {
    try {
      var text = text(body);
      if (!isXml(mediaType)) {
        PlainJson.check(body);
      }
      return parse.apply(parser(mediaType), text);
    } catch (CharacterCodingException e) {
      throw new NotThisResourceException(what, "not UTF-8", e);
    } catch (DataFormatException | IllegalArgumentException e) {
      throw new NotThisResourceException(what, e.getMessage(), e);
    } catch (RuntimeException e) {
      // The parser answers some broken input with a null pointer or an index out of bounds
      // (FhirFuzzTest found both): whatever it stumbles over, these bytes are no resource.
      throw new NotThisResourceException(what, "its structure is broken", e);
    }
  }

  /** FHIR is UTF-8; what is not is refused, because a replaced character is another text. */
  private static String text(byte[] body) throws CharacterCodingException {
    return StandardCharsets.UTF_8.newDecoder().decode(ByteBuffer.wrap(body)).toString();
  }

  String write(Resource resource, @Nullable String mediaType) {
    return parser(mediaType).encodeResourceToString(resource);
  }

  static boolean isXml(@Nullable String mediaType) {
    return mediaType != null && mediaType.contains("xml");
  }

  /** A parser is cheap and not thread-safe. */
  private IParser parser(@Nullable String mediaType) {
    var parser = isXml(mediaType) ? context.newXmlParser() : context.newJsonParser();
    parser.setParserErrorHandler(new StrictErrorHandler());
    return parser;
  }

  /** Bytes that are not the resource that was asked for. */
  static final class NotThisResourceException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NotThisResourceException(String type, @Nullable String why, Throwable cause) {
      super("This is no R4 " + type + " that can be read: " + why, cause);
    }
  }
}
