package org.driftward.ingest.contract;

import java.util.Map;

/**
 * How to reach the hospital's Kafka: the client settings that every producer, consumer and topology
 * of this process shares, {@code bootstrap.servers} among them.
 */
public record KafkaAccess(Map<String, String> settings) {

  public KafkaAccess {
    settings = Map.copyOf(settings);
    if (!settings.containsKey("bootstrap.servers")) {
      throw new IllegalArgumentException("Kafka settings without bootstrap.servers");
    }
  }

  /** Names no host and no secret. */
  @Override
  public String toString() {
    return "KafkaAccess[" + settings.size() + " settings]";
  }
}
