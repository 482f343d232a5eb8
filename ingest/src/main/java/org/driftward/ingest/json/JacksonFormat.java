package org.driftward.ingest.json;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.ObjectReader;
import com.fasterxml.jackson.databind.ObjectWriter;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.UncheckedIOException;
import org.driftward.ingest.contract.JsonFormat;

/**
 * {@link JsonFormat} by Jackson. One mapper for the process; readers and writers are thread-safe.
 */
public final class JacksonFormat<T> implements JsonFormat<T> {

  private static final ObjectMapper MAPPER = JsonSettings.apply(new ObjectMapper());

  /** A record is made up here, so that its bytes are allocated once, when their number is known. */
  private static final ThreadLocal<ByteArrayOutputStream> SHEET =
      ThreadLocal.withInitial(ByteArrayOutputStream::new);

  private static final int LARGEST_SHEET_KEPT = 1 << 20;

  private final ObjectReader reader;
  private final ObjectWriter writer;

  public JacksonFormat(Class<T> type) {
    this.reader = MAPPER.readerFor(type);
    this.writer = MAPPER.writerFor(type);
  }

  @Override
  public byte[] write(T value) {
    var sheet = SHEET.get();
    sheet.reset();
    try {
      writer.writeValue(sheet, value);
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    if (sheet.size() > LARGEST_SHEET_KEPT) {
      SHEET.remove();
    }
    return sheet.toByteArray();
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
