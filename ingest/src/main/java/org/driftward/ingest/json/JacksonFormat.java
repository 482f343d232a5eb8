package org.driftward.ingest.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.ObjectWriter;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.driftward.ingest.contract.JsonFormat;

/**
 * {@link JsonFormat} by Jackson. One mapper for the process; readers and writers are thread-safe.
 */
public final class JacksonFormat<T> implements JsonFormat<T> {

  private static final ObjectMapper MAPPER = JsonSettings.apply(new ObjectMapper());

  private final ObjectReader reader;
  private final ObjectWriter writer;

  public JacksonFormat(Class<T> type) {
    this.reader = MAPPER.readerFor(type);
    this.writer = MAPPER.writerFor(type);
  }

  @Override
  public byte[] write(T value) {
    try {
      return writer.writeValueAsBytes(value);
    } catch (JsonProcessingException e) {
      throw new UncheckedIOException(e);
    }
  }

  @Override
  public T read(byte[] json) {
    try {
      T value = reader.readValue(json);
      if (value == null) {
        throw new MalformedException("JSON null");
      }
      return value;
    } catch (JsonProcessingException e) {
      throw new MalformedException(where(e));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  private static String where(JsonProcessingException e) {
    var at = e.getLocation();
    return e.getClass().getSimpleName()
        + (at == null ? "" : " at line " + at.getLineNr() + ", column " + at.getColumnNr());
  }
}
