package org.driftward.deploy.bench;

import static java.nio.charset.StandardCharsets.UTF_8;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ingest.contract.Topic;

/**
 * The door on Kafka: JSON into the inbox. A message counts once it is dealt with: each sender waits
 * until the group has committed as far as the inbox reached after its messages.
 */
final class InboxFeed implements Feed {

  private static final int BATCH = 5_000;
  private static final String GROUP = "driftward-inbox";
  private static final int PAUSE_MILLIS = 5;

  private final KafkaProducer<String, byte[]> producer;
  private final Admin admin;
  private final Messages messages;

  InboxFeed(Map<String, Object> kafka, Messages messages) {
    this.admin = Admin.create(kafka);
    var settings = new HashMap<>(kafka);
    settings.put(ProducerConfig.ACKS_CONFIG, "all");
    settings.put(ProducerConfig.LINGER_MS_CONFIG, 5);
    this.producer =
        new KafkaProducer<>(settings, new StringSerializer(), new ByteArraySerializer());
    this.messages = messages;
  }

  @Override
  public String name() {
    return "Kafka, JSON into the inbox";
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
    var sent = new ArrayList<Future<RecordMetadata>>(BATCH);
    for (int i = 0; i < BATCH; i++) {
      var message = messages.next();
      sent.add(
          producer.send(
              new ProducerRecord<>(
                  Topic.INBOX.topic(), message.encounter(), message.assessment().getBytes(UTF_8))));
    }
    var wanted = new HashMap<TopicPartition, Long>();
    for (var answer : sent) {
      var at = answer.get();
      wanted.merge(new TopicPartition(at.topic(), at.partition()), at.offset() + 1, Math::max);
    }
    while (!dealtWith(wanted)) {
      Thread.sleep(PAUSE_MILLIS);
    }
    return BATCH;
  }

  private boolean dealtWith(Map<TopicPartition, Long> wanted)
      throws ExecutionException, InterruptedException {
    var read = admin.listConsumerGroupOffsets(GROUP).partitionsToOffsetAndMetadata().get();
    return wanted.entrySet().stream()
        .allMatch(
            one ->
                read.containsKey(one.getKey())
                    && read.get(one.getKey()).offset() >= one.getValue());
  }

  @Override
  public void close() {
    producer.close();
    admin.close();
  }
}
