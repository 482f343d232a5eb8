package org.driftward.alerts.policy;

import com.fasterxml.jackson.core.JsonProcessingException;
import com.fasterxml.jackson.databind.DeserializationFeature;
import com.fasterxml.jackson.databind.ObjectMapper;
import com.fasterxml.jackson.databind.PropertyNamingStrategies;
import com.fasterxml.jackson.databind.json.JsonMapper;
import com.fasterxml.jackson.dataformat.yaml.YAMLFactory;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.driftward.alerts.core.policy.EscalationPolicy;

/**
 * A policy as it was read.
 *
 * @param text the file, as it was; the journal keeps it
 */
public record PolicyFile(EscalationPolicy policy, String text) {

  private static final String SHIPPED = "/policy/escalation.yaml";

  /** The policy that ships with the application. */
  public static PolicyFile shipped() {
    try (var in = PolicyFile.class.getResourceAsStream(SHIPPED)) {
      if (in == null) {
        throw new IllegalStateException(SHIPPED + " is not in the application");
      }
      return parse(SHIPPED, new String(in.readAllBytes(), StandardCharsets.UTF_8));
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /**
   * @throws IllegalStateException naming the file and what is wrong with it
   */
  public static PolicyFile read(Path file) {
    try {
      return parse(file.getFileName().toString(), Files.readString(file));
    } catch (IOException e) {
      throw new IllegalStateException("the policy " + file.getFileName() + " cannot be read", e);
    }
  }

  /**
   * @param name for messages
   */
  public static PolicyFile parse(String name, String text) {
    try {
      var section = yaml().readTree(text).path("escalation");
      if (!section.isObject()) {
        throw new IllegalStateException(name + ": no section \"escalation\"");
      }
      return new PolicyFile(yaml().treeToValue(section, EscalationPolicy.class), text);
    } catch (JsonProcessingException e) {
      throw new IllegalStateException(name + ": " + e.getOriginalMessage(), e);
    }
  }

  /** A misspelt setting must not fall back to a default in silence. */
  private static ObjectMapper yaml() {
    return JsonMapper.builder(new YAMLFactory())
        .findAndAddModules()
        .propertyNamingStrategy(PropertyNamingStrategies.KEBAB_CASE)
        .enable(DeserializationFeature.FAIL_ON_UNKNOWN_PROPERTIES)
        .enable(DeserializationFeature.FAIL_ON_NULL_FOR_PRIMITIVES)
        .build();
  }
}
