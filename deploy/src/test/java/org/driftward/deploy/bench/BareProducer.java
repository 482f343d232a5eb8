package org.driftward.deploy.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.Future;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ingest.contract.Topic;

/** A Kafka producer of the same bytes that checks nothing: what no intake can surpass. */
final class BareProducer implements Feed {

  private static final int BATCH = 500;

  private final KafkaProducer<String, byte[]> producer;
  private final Messages messages;

  BareProducer(Map<String, Object> kafka, Messages messages) {
    var settings = new HashMap<>(kafka);
    settings.put(ProducerConfig.ACKS_CONFIG, "all");
    settings.put(ProducerConfig.LINGER_MS_CONFIG, 5);
    this.producer =
        new KafkaProducer<>(settings, new StringSerializer(), new ByteArraySerializer());
    this.messages = messages;
  }

  @Override
  public String name() {
    return "bare producer, 500 in flight";
  }

  @Override
  public int senders() {
    return 2;
  }

  @Override
  public int messages() {
    return BATCH;
  }

  @Override
  public int send() throws Exception {
    var acknowledged = new ArrayList<Future<RecordMetadata>>(BATCH);
    for (int i = 0; i < BATCH; i++) {
      var message = messages.next();
      acknowledged.add(
          producer.send(
              new ProducerRecord<>(
                  Topic.ASSESSMENTS.topic(),
                  message.encounter(),
                  message.assessment().getBytes(UTF_8))));
    }
    for (var answer : acknowledged) {
      answer.get();
    }
    return BATCH;
  }

  @Override
  public void close() {
    producer.close();
  }
}
