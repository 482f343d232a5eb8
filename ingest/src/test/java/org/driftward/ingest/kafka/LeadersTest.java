package org.driftward.ingest.kafka;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.atomic.AtomicInteger;
import java.util.stream.IntStream;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.testing.Broker;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;

/** On the real broker. */
class LeadersTest {

  private static final int ROUNDS = 12;
  private static final int RECORDS = 3_000;

  private static Broker broker;

  @BeforeAll
  static void start() {
    broker = Broker.startBare();
  }

  @AfterAll
  static void stop() {
    broker.close();
  }

  /** Without waiting, a third of the rounds lose some. */
  @Test
  void shouldLetABurstIntoANewTopicLoseNothing() throws Exception {
    var lost = new AtomicInteger();
    try (var admin = Admin.create(Map.<String, Object>copyOf(broker.access().settings()))) {
      for (int round = 0; round < ROUNDS; round++) {
        var names = names(round);
        admin.createTopics(names.stream().map(name -> new NewTopic(name, 6, (short) 1)).toList());

        broker.access().awaitLeaders(names, Duration.ofSeconds(30));

        burst(names.get(0), lost);
      }
    }
    assertThat(lost).hasValue(0);
  }

  @Test
  void shouldSayThatATopicDoesNotAppear() {
    assertThatExceptionOfType(ExecutionException.class)
        .isThrownBy(() -> broker.access().awaitLeaders(List.of("nobody"), Duration.ofMillis(200)))
        .withCauseInstanceOf(UnknownTopicOrPartitionException.class);
  }

  private static List<String> names(int round) {
    return IntStream.range(0, 7).mapToObj(i -> "new-" + round + "-" + i).toList();
  }

  private static void burst(String topic, AtomicInteger lost) {
    var settings = new HashMap<String, Object>(broker.access().settings());
    settings.put(ProducerConfig.DELIVERY_TIMEOUT_MS_CONFIG, 6_000);
    settings.put(ProducerConfig.REQUEST_TIMEOUT_MS_CONFIG, 3_000);
    try (var producer =
        new KafkaProducer<>(settings, new StringSerializer(), new ByteArraySerializer())) {
      for (int i = 0; i < RECORDS; i++) {
        var unused =
            producer.send(
                new ProducerRecord<>(topic, "key-" + i, new byte[400]),
                (metadata, exception) -> lost.addAndGet(exception == null ? 0 : 1));
      }
    }
  }
}
