package org.driftward.ingest.contract;

import org.driftward.ingest.json.JacksonFormat;

/**
 * Writes and reads one record type as the JSON of the topic contracts. Thread-safe.
 *
 * <p>Absent values are left out; instants are ISO 8601 in UTC; {@link Word} enums are lower-case
 * words. A reader ignores fields that it does not know and refuses words that it does not know.
 */
public interface JsonFormat<T> {

  byte[] write(T value);

  /**
   * @throws MalformedException if the bytes are not JSON of this record
   */
  T read(byte[] json);

  static <T> JsonFormat<T> of(Class<T> type) {
    return new JacksonFormat<>(type);
  }

  /** Bytes that are not what they should be. The message says where, never what. */
  final class MalformedException extends RuntimeException {
    private static final long serialVersionUID = 1L;

    public MalformedException(String message) {
      super(message);
    }
  }
}
