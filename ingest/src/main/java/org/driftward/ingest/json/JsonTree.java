package org.driftward.ingest.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.core.StreamReadFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.json.JsonMapper;
import java.io.IOException;
import org.jspecify.annotations.Nullable;

/**
 * JSON as plain Java: maps, lists, strings, exact numbers, booleans and nulls, which the core reads
 * without knowing Jackson.
 */
public final class JsonTree {

  /**
   * A name that occurs twice in one object is refused: parsers differ in which of the two they
   * keep, and neither choice is safe for a patient.
   */
  private static final ObjectReader READER =
      JsonMapper.builder()
          .enable(StreamReadFeature.STRICT_DUPLICATE_DETECTION)
          .enable(DeserializationFeature.USE_BIG_DECIMAL_FOR_FLOATS)
          .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS)
          .build()
          .readerFor(Object.class);

  private JsonTree() {}

  /**
   * @throws NotJsonException saying where, never what
   */
  public static @Nullable Object parse(byte[] json) throws NotJsonException {
    try {
      return READER.readValue(json);
    } catch (JsonProcessingException e) {
      var at = e.getLocation();
      throw new NotJsonException(
          at == null
              ? "not JSON"
              : "not JSON from line " + at.getLineNr() + ", column " + at.getColumnNr());
    } catch (IOException e) {
      throw new NotJsonException("not JSON in any of its encodings");
    }
  }

  /** The bytes are not JSON. */
  public static final class NotJsonException extends Exception {
    private static final long serialVersionUID = 1L;

    NotJsonException(String message) {
      super(message);
    }
  }
}
