package org.driftward.ingest.json;

import com.fasterxml.jackson.core.JsonParser;
import com.fasterxml.jackson.core.JsonToken;
import com.fasterxml.jackson.databind.DeserializationContext;
import com.fasterxml.jackson.databind.deser.std.StdDeserializer;
import com.fasterxml.jackson.datatype.jsr310.deser.InstantDeserializer;
import java.io.IOException;
import java.time.Instant;
import org.driftward.ingest.contract.Recent;

/** Instants as the library reads them. Only what it did read is remembered, never a fault. */
final class InstantReader extends StdDeserializer<Instant> {

  private static final long serialVersionUID = 1L;

  private static final Recent<String, Instant> INSTANTS = new Recent<>(8);

  InstantReader() {
    super(Instant.class);
  }

  @Override
  public Instant deserialize(JsonParser in, DeserializationContext context) throws IOException {
    return in.hasToken(JsonToken.VALUE_STRING)
        ? INSTANTS.get(in.getText(), text -> InstantDeserializer.INSTANT.deserialize(in, context))
        : InstantDeserializer.INSTANT.deserialize(in, context);
  }
}
