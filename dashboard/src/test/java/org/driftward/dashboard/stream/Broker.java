package org.driftward.dashboard.stream;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.Future;
import kafka.server.KafkaConfig;
import kafka.server.KafkaRaftServer;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.clients.producer.RecordMetadata;
import org.apache.kafka.common.Uuid;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.apache.kafka.common.utils.Time;
import org.apache.kafka.metadata.storage.Formatter;
import org.apache.kafka.server.common.MetadataVersion;
import org.driftward.ingest.contract.KafkaAccess;
import org.driftward.ingest.contract.Topic;

/** A real broker of one node on loopback, in this process, with every topic of the flow. */
final class Broker implements AutoCloseable {

  private final Path directory;
  private final int port = freePort();
  private final int controllerPort = freePort();
  private final KafkaRaftServer server;

  Broker() {
    try {
      directory = Files.createTempDirectory("driftward-broker");
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
    format();
    server = new KafkaRaftServer(KafkaConfig.fromProps(properties()), Time.SYSTEM);
    server.startup();
    createTopics();
  }

  KafkaAccess access() {
    return new KafkaAccess(Map.of("bootstrap.servers", "127.0.0.1:" + port));
  }

  /** Returns when the broker has acknowledged all of them. */
  void send(List<ProducerRecord<String, byte[]>> records) {
    try (var producer =
        new KafkaProducer<>(
            Map.<String, Object>copyOf(access().settings()),
            new StringSerializer(),
            new ByteArraySerializer())) {
      var acknowledgements = new ArrayList<Future<RecordMetadata>>();
      for (var record : records) {
        acknowledgements.add(producer.send(record));
      }
      for (var acknowledgement : acknowledgements) {
        acknowledgement.get();
      }
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException("the records cannot be sent", e);
    }
  }

  @Override
  public void close() {
    server.shutdown();
    server.awaitShutdown();
  }

  private void format() {
    try (var nowhere =
        new PrintStream(OutputStream.nullOutputStream(), true, StandardCharsets.UTF_8)) {
      new Formatter()
          .setNodeId(1)
          .setClusterId(Uuid.randomUuid().toString())
          .setDirectories(List.of(directory.toString()))
          .setMetadataLogDirectory(directory.toString())
          .setControllerListenerName("CONTROLLER")
          .setReleaseVersion(MetadataVersion.latestProduction())
          .setPrintStream(nowhere)
          .run();
    } catch (Exception e) {
      throw new IllegalStateException("the broker's directory cannot be formatted", e);
    }
  }

  private void createTopics() {
    var topics = new ArrayList<NewTopic>();
    for (Topic topic : Topic.values()) {
      topics.add(new NewTopic(topic.topic(), 2, (short) 1));
    }
    try (var admin = Admin.create(Map.<String, Object>copyOf(access().settings()))) {
      admin.createTopics(topics).all().get();
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException("the topics cannot be created", e);
    }
  }

  private Properties properties() {
    var properties = new Properties();
    properties.putAll(
        Map.of(
            "process.roles", "broker,controller",
            "node.id", "1",
            "controller.quorum.voters", "1@127.0.0.1:" + controllerPort,
            "controller.listener.names", "CONTROLLER",
            "listeners",
                "PLAINTEXT://127.0.0.1:" + port + ",CONTROLLER://127.0.0.1:" + controllerPort,
            "log.dirs", directory.toString(),
            "offsets.topic.replication.factor", "1",
            "offsets.topic.num.partitions", "1",
            "group.initial.rebalance.delay.ms", "0",
            "auto.create.topics.enable", "false"));
    return properties;
  }

  private static int freePort() {
    try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }
}
