package org.driftward.ingest.files;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.dataformat.yaml.YAMLMapper;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.core.files.FileMapping;
import org.jspecify.annotations.Nullable;

/** A mapping as an engineer writes it: YAML, or JSON, which is YAML too. */
final class MappingText {

  private static final ObjectReader READER =
      new YAMLMapper()
          .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
          .readerFor(Written.class);

  private MappingText() {}

  /** The text is no mapping. The message says why, for whoever wrote it. */
  static final class NotAMappingException extends Exception {
    private static final long serialVersionUID = 1L;

    NotAMappingException(String message) {
      super(message);
    }
  }

  private record Written(
      @Nullable String delimiter,
      @Nullable Map<String, String> columns,
      @Nullable List<String> ignore,
      @Nullable Map<String, Map<String, String>> values,
      @Nullable String zone,
      @Nullable String time,
      boolean decimalComma) {}

  /** Our own header where there is no text. */
  static FileMapping read(@Nullable String text) throws NotAMappingException {
    if (text == null) {
      return FileMapping.OWN;
    }
    try {
      Written written = READER.readValue(text);
      if (written == null) {
        throw new NotAMappingException("the mapping is empty");
      }
      var delimiter = written.delimiter() == null ? "," : written.delimiter();
      if (delimiter.length() != 1) {
        throw new NotAMappingException("the delimiter is one character");
      }
      return new FileMapping(
          delimiter.charAt(0),
          written.columns() == null ? Map.of() : written.columns(),
          written.ignore() == null ? List.of() : written.ignore(),
          written.values() == null ? Map.of() : written.values(),
          written.zone() == null ? null : ZoneId.of(written.zone()),
          written.time(),
          written.decimalComma());
    } catch (JsonProcessingException e) {
      throw new NotAMappingException("not a mapping: " + e.getOriginalMessage());
    } catch (IllegalArgumentException | NullPointerException | DateTimeException e) {
      throw new NotAMappingException(String.valueOf(e.getMessage()));
    }
  }
}
