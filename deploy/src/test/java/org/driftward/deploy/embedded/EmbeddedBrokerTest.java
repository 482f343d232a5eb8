package org.driftward.deploy.embedded;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.net.ConnectException;
import java.net.InetAddress;
import java.net.InetSocketAddress;
import java.net.NetworkInterface;
import java.net.Socket;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.errors.SaslAuthenticationException;
import org.apache.kafka.common.errors.TopicAuthorizationException;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ingest.contract.Topic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class EmbeddedBrokerTest {

  private static final String PASSWORD = "between-us";
  private static final String TOPIC = "kept";

  @TempDir Path folder;

  @Test
  void shouldFindItsRecordsAgainAfterARestart() throws Exception {
    try (var broker = EmbeddedBroker.start(folder, 0, PASSWORD)) {
      create(broker);
      send(broker, "first");
    }
    try (var broker = EmbeddedBroker.start(folder, 0, PASSWORD)) {
      send(broker, "second");

      assertThat(read(broker, 2)).containsExactly("first", "second");
    }
  }

  @Test
  void shouldServeNobodyWithoutThePassword() {
    try (var broker = EmbeddedBroker.start(folder, 0, PASSWORD)) {
      var wrong = new HashMap<String, Object>(client(broker));
      wrong.computeIfPresent(
          "sasl.jaas.config", (key, value) -> value.toString().replace(PASSWORD, "guess"));
      try (var admin = Admin.create(wrong)) {
        assertThatExceptionOfType(ExecutionException.class)
            .isThrownBy(() -> admin.listTopics().names().get())
            .withCauseInstanceOf(SaslAuthenticationException.class);
      }
    }
  }

  /** Who may write what, asked of Kafka's own authorizer. */
  @Test
  void shouldLetFeedsWriteTheInboxAndNothingElse() throws Exception {
    try (var broker = EmbeddedBroker.start(folder, 0, PASSWORD, "for-feeds")) {
      try (var admin = Admin.create(client(broker))) {
        var topics =
            Arrays.stream(Topic.values())
                .map(topic -> new NewTopic(topic.topic(), 1, (short) 1))
                .toList();
        admin.createTopics(topics).all().get();
      }
      var feeds = new HashMap<>(client(broker));
      feeds.computeIfPresent(
          "sasl.jaas.config",
          (key, value) ->
              value
                  .toString()
                  .replace("username=\"driftward\"", "username=\"feeds\"")
                  .replace(PASSWORD, "for-feeds"));
      feeds.put("max.block.ms", 10_000);
      try (var producer =
          new KafkaProducer<>(feeds, new StringSerializer(), new StringSerializer())) {
        for (var topic : Topic.values()) {
          var sending = producer.send(new ProducerRecord<>(topic.topic(), "V-1", "{}"));
          if (topic == Topic.INBOX) {
            assertThat(sending.get().hasOffset()).isTrue();
          } else {
            assertThatExceptionOfType(ExecutionException.class)
                .as(topic.topic())
                .isThrownBy(sending::get)
                .withCauseInstanceOf(TopicAuthorizationException.class);
          }
        }
      }
      try (var admin = Admin.create(feeds)) {
        assertThat(admin.listTopics().names().get()).containsExactly(Topic.INBOX.topic());
      }
    }
  }

  @Test
  void shouldListenOnLoopbackOnly() throws Exception {
    try (var broker = EmbeddedBroker.start(folder, 0, PASSWORD)) {
      var address = broker.properties().get("kafka.bootstrap.servers");
      int port = Integer.parseInt(address.substring(address.indexOf(':') + 1));
      for (var outside : outsideAddresses()) {
        try (var socket = new Socket()) {
          assertThatThrownBy(() -> socket.connect(new InetSocketAddress(outside, port), 500))
              .isInstanceOf(ConnectException.class);
        }
      }
    }
  }

  private static List<InetAddress> outsideAddresses() throws Exception {
    return NetworkInterface.networkInterfaces()
        .flatMap(NetworkInterface::inetAddresses)
        .filter(address -> !address.isLoopbackAddress())
        .toList();
  }

  private static Map<String, Object> client(EmbeddedBroker broker) {
    var settings = new HashMap<String, Object>();
    broker
        .properties()
        .forEach((name, value) -> settings.put(name.substring("kafka.".length()), value));
    return settings;
  }

  private static void create(EmbeddedBroker broker) throws Exception {
    try (var admin = Admin.create(client(broker))) {
      admin.createTopics(List.of(new NewTopic(TOPIC, 1, (short) 1))).all().get();
    }
  }

  private static void send(EmbeddedBroker broker, String value) throws Exception {
    try (var producer =
        new KafkaProducer<>(client(broker), new StringSerializer(), new StringSerializer())) {
      producer.send(new ProducerRecord<>(TOPIC, value)).get();
    }
  }

  private static List<String> read(EmbeddedBroker broker, int count) {
    var values = new ArrayList<String>();
    try (var consumer =
        new KafkaConsumer<>(client(broker), new StringDeserializer(), new StringDeserializer())) {
      var partition = new TopicPartition(TOPIC, 0);
      consumer.assign(List.of(partition));
      consumer.seekToBeginning(List.of(partition));
      for (int polls = 0; values.size() < count && polls < 50; polls++) {
        consumer.poll(Duration.ofMillis(200)).forEach(record -> values.add(record.value()));
      }
    }
    return values;
  }
}
