package org.driftward.ground.kafka;

import java.time.Duration;
import java.util.Collection;
import java.util.Map;
import java.util.concurrent.ExecutionException;

/**
 * How to reach Kafka: the client settings that every producer, consumer and topology of this
 * process shares, {@code bootstrap.servers} among them.
 */
public record KafkaAccess(Map<String, String> settings) {

  public KafkaAccess {
    settings = Map.copyOf(settings);
    if (!settings.containsKey("bootstrap.servers")) {
      throw new IllegalArgumentException("Kafka settings without bootstrap.servers");
    }
  }

  /**
   * Returns once the leader of every partition of these topics takes records. Topics that were made
   * a moment before do not yet.
   *
   * @throws ExecutionException if Kafka refuses, or some leader is not there after {@code patience}
   */
  public void awaitLeaders(Collection<String> topics, Duration patience)
      throws ExecutionException, InterruptedException {
    Leaders.await(this, topics, patience);
  }

  /** Names no host and no secret. */
  @Override
  public String toString() {
    return "KafkaAccess[" + settings.size() + " settings]";
  }
}
