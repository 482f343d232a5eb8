package org.driftward.deploy.whole;

import static java.nio.charset.StandardCharsets.UTF_8;
import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;

import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;
import java.util.stream.IntStream;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.driftward.ingest.contract.Topic;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/**
 * Events on the hospital's own Kafka to the board, while the application is killed without a word.
 * The points follow from the table of the Royal College of Physicians (2017).
 */
class InboxIT {

  private static final Duration PATIENCE = Duration.ofMinutes(3);
  private static final int MANY = 6_000;
  private static final ObjectMapper JSON = new ObjectMapper();

  @TempDir Path folder;

  @Test
  void shouldKeepEachEventOnceThoughTheApplicationIsKilled() {
    try (var outside = new Outside(folder.resolve("outside"))) {
      var data = folder.resolve("data");
      try (var app = RunningApp.start(data, outside.environment())) {
        Ward.open(app, "heron");
        send(outside, admission());
        send(outside, sets());
        await().atMost(PATIENCE).until(() -> !kept(outside).isEmpty());
        app.kill();
      }
      assertThat(kept(outside).size()).as("killed in the middle").isLessThan(MANY);

      try (var app = RunningApp.start(data, outside.environment())) {
        var heron = Ward.of(app, "heron");
        await()
            .atMost(PATIENCE)
            .pollInterval(Duration.ofSeconds(1))
            .until(() -> kept(outside).size() >= MANY);
        assertThat(kept(outside))
            .containsExactlyInAnyOrderElementsOf(
                IntStream.range(0, MANY).mapToObj(i -> "K-" + i).toList());
        heron.awaitCard(
            "V-7001", PATIENCE, card -> assertThat(card.at("/score/low").asInt()).isEqualTo(3));
      }
    }
  }

  private static List<ProducerRecord<String, byte[]>> admission() {
    var state =
        """
        {"patient": {"id": "P-V-7001", "name": "Quillwater, Maren", "birthDate": "1950-04-03"},
         "ward": "heron", "bed": "A2", "admitted": "%s"}"""
            .formatted(Instant.now().minus(Duration.ofDays(2)));
    var sent = new ProducerRecord<>(Topic.INBOX.topic(), "V-7001", state.getBytes(UTF_8));
    sent.headers().add("kind", "encounter".getBytes(UTF_8));
    return List.of(sent);
  }

  /** A set every few seconds; 3 points for 25 /min, the rest 0. */
  private static List<ProducerRecord<String, byte[]>> sets() {
    var first = Instant.now().minusSeconds(5L * MANY / 4);
    return IntStream.range(0, MANY)
        .mapToObj(
            i ->
                """
                {"id": "K-%d", "encounter": "V-7001", "patient": "P-V-7001", "takenAt": "%s",
                 "source": "monitor", "by": "m-2", "findings": [
                  {"code": "respiratory-rate", "value": 25, "unit": "/min"},
                  {"code": "heart-rate", "value": 80, "unit": "/min"}]}"""
                    .formatted(i, first.plusSeconds(5L * i / 4)))
        .map(json -> new ProducerRecord<>(Topic.INBOX.topic(), "V-7001", json.getBytes(UTF_8)))
        .toList();
  }

  private static void send(Outside outside, List<ProducerRecord<String, byte[]>> records) {
    try (var producer =
        new KafkaProducer<>(outside.kafka(), new StringSerializer(), new ByteArraySerializer())) {
      records.forEach(one -> Objects.requireNonNull(producer.send(one)));
      producer.flush();
    }
  }

  private static List<String> kept(Outside outside) {
    var settings = new HashMap<>(outside.kafka());
    settings.put("isolation.level", "read_committed");
    var ids = new ArrayList<String>();
    try (var consumer =
        new KafkaConsumer<>(settings, new StringDeserializer(), new ByteArrayDeserializer())) {
      var partitions =
          consumer.partitionsFor(Topic.ASSESSMENTS.topic()).stream()
              .map(one -> new TopicPartition(one.topic(), one.partition()))
              .toList();
      consumer.assign(partitions);
      consumer.seekToBeginning(partitions);
      var ends = consumer.endOffsets(partitions);
      while (ends.entrySet().stream().anyMatch(e -> consumer.position(e.getKey()) < e.getValue())) {
        consumer.poll(Duration.ofMillis(100)).forEach(one -> ids.add(id(one.value())));
      }
    }
    return ids;
  }

  private static String id(byte[] assessment) {
    try {
      return JSON.readTree(assessment).get("id").asText();
    } catch (IOException e) {
      throw new AssertionError(e);
    }
  }
}
