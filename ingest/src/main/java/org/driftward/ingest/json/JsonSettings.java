package org.driftward.ingest.json;

import com.fasterxml.jackson.annotation.JsonInclude;
import com.fasterxml.jackson.core.StreamWriteFeature;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.SerializationFeature;
import com.fasterxml.jackson.datatype.jsr310.JavaTimeModule;

/** How every mapper of the house writes and reads, on a topic as over HTTP. */
public final class JsonSettings {

  private JsonSettings() {}

  public static ObjectMapper apply(ObjectMapper mapper) {
    return mapper
        // Of two modules for a type the later one counts, and for moments that is ours.
        .registerModule(new JavaTimeModule())
        .findAndRegisterModules()
        .setDefaultPropertyInclusion(
            JsonInclude.Value.construct(JsonInclude.Include.NON_NULL, JsonInclude.Include.ALWAYS))
        .disable(SerializationFeature.WRITE_DATES_AS_TIMESTAMPS)
        .disable(SerializationFeature.WRITE_DURATIONS_AS_TIMESTAMPS)
        .configure(StreamWriteFeature.USE_FAST_DOUBLE_WRITER.mappedFeature(), true)
        .disable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
        .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
        .enable(DeserializationFeature.FAIL_ON_TRAILING_TOKENS);
  }
}
