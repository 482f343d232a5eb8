package org.driftward.ingest.web;

import com.fasterxml.jackson.databind.ObjectMapper;
import io.quarkus.jackson.ObjectMapperCustomizer;
import jakarta.inject.Singleton;
import org.driftward.ingest.json.JsonSettings;

/** HTTP speaks the same JSON as the topics. */
@Singleton
public class HouseJson implements ObjectMapperCustomizer {
  @Override
  public void customize(ObjectMapper mapper) {
    JsonSettings.apply(mapper);
  }
}
