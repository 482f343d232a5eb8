package org.driftward.deploy.bench;

import java.time.Duration;
import java.util.HashMap;
import java.util.Map;
import java.util.Objects;
import java.util.Set;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ingest.contract.Topic;

/**
 * A bare consumer and producer: copies the inbox, which another feed has filled, to a topic of its
 * own, in the same transactions as the door but judging nothing. It runs in this process, so the
 * application's CPU says nothing about it.
 */
final class BareCopy implements Feed {

  private static final String TOPIC = "bench.copy";
  private static final int PARTITIONS = 6;
  private static final int BATCH = 1000;

  private final KafkaConsumer<String, byte[]> consumer;
  private final KafkaProducer<String, byte[]> producer;

  BareCopy(Map<String, Object> kafka) throws ExecutionException, InterruptedException {
    try (var admin = Admin.create(kafka)) {
      admin.createTopics(Set.of(new NewTopic(TOPIC, PARTITIONS, (short) 1))).all().get();
    }
    var in = new HashMap<>(kafka);
    in.put(ConsumerConfig.GROUP_ID_CONFIG, TOPIC);
    in.put(ConsumerConfig.ENABLE_AUTO_COMMIT_CONFIG, false);
    in.put(ConsumerConfig.AUTO_OFFSET_RESET_CONFIG, "earliest");
    in.put(ConsumerConfig.MAX_POLL_RECORDS_CONFIG, BATCH);
    this.consumer = new KafkaConsumer<>(in, new StringDeserializer(), new ByteArrayDeserializer());
    consumer.subscribe(Set.of(Topic.INBOX.topic()));
    var out = new HashMap<>(kafka);
    out.put(ProducerConfig.TRANSACTIONAL_ID_CONFIG, TOPIC);
    out.put(ProducerConfig.COMPRESSION_TYPE_CONFIG, "lz4");
    this.producer = new KafkaProducer<>(out, new StringSerializer(), new ByteArraySerializer());
    producer.initTransactions();
  }

  @Override
  public String name() {
    return "bare consumer and producer";
  }

  @Override
  public int senders() {
    return 1;
  }

  @Override
  public int send() {
    var records = consumer.poll(Duration.ofMillis(100));
    if (records.isEmpty()) {
      consumer.seekToBeginning(consumer.assignment());
      return 0;
    }
    producer.beginTransaction();
    for (var one : records) {
      // A record that fails makes the commit fail.
      Objects.requireNonNull(producer.send(new ProducerRecord<>(TOPIC, one.key(), one.value())));
    }
    producer.sendOffsetsToTransaction(records.nextOffsets(), consumer.groupMetadata());
    producer.commitTransaction();
    return records.count();
  }

  @Override
  public void close() {
    consumer.close();
    producer.close();
  }
}
