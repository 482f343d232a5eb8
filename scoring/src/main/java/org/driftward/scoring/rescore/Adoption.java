package org.driftward.scoring.rescore;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.scoring.edition.EditionFile;
import org.driftward.scoring.edition.EditionsInForce;
import org.driftward.scoring.stream.EditionTopic;

/** Tells every process that scores of an adopted edition. */
final class Adoption {

  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private final Map<String, Object> settings;
  private final EditionsInForce editions;

  Adoption(KafkaAccess access, EditionsInForce editions) {
    this.settings = new HashMap<>(access.settings());
    this.settings.put(ProducerConfig.ACKS_CONFIG, "all");
    this.editions = editions;
  }

  /**
   * @throws KafkaException if Kafka does not acknowledge it, or this process does not hear of it
   */
  void publish(EditionFile file, String version) {
    var message =
        new ProducerRecord<>(EditionTopic.TOPIC, version, EditionTopic.FORMAT.write(file));
    try (var producer =
        new KafkaProducer<>(settings, new StringSerializer(), new ByteArraySerializer())) {
      producer.send(message).get();
      if (!editions.await(version, PATIENCE)) {
        throw new KafkaException("the edition is kept and has not been heard of here");
      }
    } catch (ExecutionException e) {
      throw new KafkaException("the edition was not kept", e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw new KafkaException("interrupted", e);
    }
  }
}
