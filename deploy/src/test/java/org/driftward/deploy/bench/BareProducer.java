package org.driftward.deploy.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;

/**
 * A Kafka producer of the same bytes that checks nothing: what no intake can surpass. It writes to
 * a topic of its own, because the application counts whatever arrives in those of the house.
 */
final class BareProducer implements Feed {

  private static final int BATCH = 500;
  private static final String TOPIC = "bench.bare";
  private static final int PARTITIONS = 6;

  private final KafkaProducer<String, byte[]> producer;
  private final Messages messages;

  BareProducer(Map<String, Object> kafka, Messages messages)
      throws ExecutionException, InterruptedException {
    try (var admin = Admin.create(kafka)) {
      admin.createTopics(List.of(new NewTopic(TOPIC, PARTITIONS, (short) 1))).all().get();
    }
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
                  TOPIC, message.encounter(), message.assessment().getBytes(UTF_8))));
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
