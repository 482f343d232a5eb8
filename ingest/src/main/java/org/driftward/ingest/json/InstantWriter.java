package org.driftward.ingest.json;

import com.fasterxml.jackson.core.JsonGenerator;
import com.fasterxml.jackson.core.io.SerializedString;
import com.fasterxml.jackson.databind.SerializerProvider;
import com.fasterxml.jackson.databind.ser.std.StdSerializer;
import java.io.IOException;
import java.time.Instant;
import org.driftward.ingest.contract.Recent;

/** Instants as ISO 8601 in UTC. */
final class InstantWriter extends StdSerializer<Instant> {

  private static final long serialVersionUID = 1L;

  private static final Recent<Instant, SerializedString> TEXTS = new Recent<>(8);

  InstantWriter() {
    super(Instant.class);
  }

  @Override
  public void serialize(Instant instant, JsonGenerator out, SerializerProvider provider)
      throws IOException {
    out.writeString(TEXTS.get(instant, one -> new SerializedString(one.toString())));
  }
}
