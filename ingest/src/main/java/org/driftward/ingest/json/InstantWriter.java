package org.driftward.ingest.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.time.Instant;

/**
 * Instants as ISO 8601 in UTC. The inputs of a snapshot's scores were mostly taken at the same
 * moment, so the last text of each thread is kept and not made again.
 */
final class InstantWriter extends StdSerializer<Instant> {

  private static final long serialVersionUID = 1L;

  private static final ThreadLocal<Written> LAST =
      ThreadLocal.withInitial(() -> Written.of(Instant.EPOCH));

  private record Written(Instant instant, SerializedString text) {
    static Written of(Instant instant) {
      return new Written(instant, new SerializedString(instant.toString()));
    }
  }

  InstantWriter() {
    super(Instant.class);
  }

  @Override
  public void serialize(Instant instant, JsonGenerator out, SerializerProvider provider)
      throws IOException {
    var last = LAST.get();
    if (!last.instant().equals(instant)) {
      last = Written.of(instant);
      LAST.set(last);
    }
    out.writeString(last.text());
  }
}
