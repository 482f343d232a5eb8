package org.driftward.deploy.kafka;

import jakarta.enterprise.inject.Produces;
import jakarta.inject.Singleton;
import java.util.HashMap;
import org.apache.kafka.clients.admin.AdminClientConfig;
import org.driftward.ground.kafka.KafkaAccess;
import org.eclipse.microprofile.config.Config;

/**
 * Everything configured under {@code kafka.} that every kind of client understands: where the
 * brokers are and how to prove who we are. What one producer or consumer needs besides is its own
 * business.
 */
final class KafkaAccessProducer {

  private static final String PREFIX = "kafka.";

  @Produces
  @Singleton
  KafkaAccess access(Config config) {
    var settings = new HashMap<String, String>();
    for (var name : AdminClientConfig.configNames()) {
      config
          .getOptionalValue(PREFIX + name, String.class)
          .ifPresent(value -> settings.put(name, value));
    }
    return new KafkaAccess(settings);
  }
}
