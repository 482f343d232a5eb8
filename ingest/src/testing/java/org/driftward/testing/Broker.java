package org.driftward.testing;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.io.UncheckedIOException;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import kafka.server.KafkaConfig;
import kafka.server.KafkaRaftServer;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.consumer.ConsumerRecord;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.clients.producer.KafkaProducer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.Uuid;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.apache.kafka.common.utils.Time;
import org.apache.kafka.common.utils.Utils;
import org.apache.kafka.metadata.storage.Formatter;
import org.apache.kafka.server.common.MetadataVersion;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.Topic;

/**
 * A real broker of one node on loopback, in this process, that can be stopped and started again.
 */
public final class Broker implements AutoCloseable {

  /** The broker's own topics, for one node that nobody waits for. */
  private static final Map<String, String> ONE_NODE =
      Map.of(
          "offsets.topic.num.partitions", "2",
          "offsets.topic.replication.factor", "1",
          "transaction.state.log.num.partitions", "2",
          "transaction.state.log.replication.factor", "1",
          "transaction.state.log.min.isr", "1",
          "share.coordinator.state.topic.replication.factor", "1",
          "share.coordinator.state.topic.min.isr", "1",
          "group.initial.rebalance.delay.ms", "0");

  static {
    Logs.quiet();
  }

  private final Path directory;
  private final int port = freePort();
  private final int controllerPort = freePort();
  private KafkaRaftServer server;

  private Broker(Path directory) {
    this.directory = directory;
  }

  /** Started, with every topic of the flow. */
  public static Broker start() {
    var broker = startBare();
    broker.createTopics(3);
    return broker;
  }

  /** Started, without a topic. */
  public static Broker startBare() {
    try {
      var broker = new Broker(Files.createTempDirectory("driftward-broker"));
      broker.format();
      broker.startAgain();
      return broker;
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  public KafkaAccess access() {
    return new KafkaAccess(Map.of("bootstrap.servers", "127.0.0.1:" + port));
  }

  public void startAgain() {
    server = new KafkaRaftServer(KafkaConfig.fromProps(properties()), Time.SYSTEM);
    server.startup();
  }

  public void stop() {
    server.shutdown();
    server.awaitShutdown();
  }

  @Override
  public void close() {
    stop();
    try {
      Utils.delete(directory.toFile());
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    }
  }

  /** Returns when the broker has acknowledged all of them. */
  public void send(List<ProducerRecord<String, byte[]>> records) {
    try (var producer =
        new KafkaProducer<>(
            Map.<String, Object>copyOf(access().settings()),
            new StringSerializer(),
            new ByteArraySerializer())) {
      var acknowledgements = records.stream().map(producer::send).toList();
      for (var acknowledgement : acknowledgements) {
        acknowledgement.get();
      }
    } catch (InterruptedException | ExecutionException e) {
      throw new IllegalStateException("the records cannot be sent", e);
    }
  }

  /** Everything committed that a topic holds now, partition by partition. */
  public List<ConsumerRecord<String, byte[]>> read(Topic topic) {
    var settings = new HashMap<String, Object>(access().settings());
    settings.put("isolation.level", "read_committed");
    var found = new ArrayList<ConsumerRecord<String, byte[]>>();
    try (var consumer =
        new KafkaConsumer<>(settings, new StringDeserializer(), new ByteArrayDeserializer())) {
      var partitions =
          consumer.partitionsFor(topic.topic()).stream()
              .map(partition -> new TopicPartition(partition.topic(), partition.partition()))
              .toList();
      consumer.assign(partitions);
      consumer.seekToBeginning(partitions);
      var ends = consumer.endOffsets(partitions);
      while (ends.entrySet().stream().anyMatch(e -> consumer.position(e.getKey()) < e.getValue())) {
        consumer.poll(Duration.ofMillis(100)).forEach(found::add);
      }
    }
    return found;
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

  /** Makes every topic of the flow as the application would, with so many partitions. */
  public void createTopics(int partitions) {
    var topics =
        Arrays.stream(Topic.values())
            .map(
                topic ->
                    new NewTopic(topic.topic(), partitions, (short) 1)
                        .configs(
                            Map.of(
                                "cleanup.policy",
                                topic.compacted() ? "compact" : "delete",
                                "max.message.bytes",
                                Integer.toString(topic.largestRecord()))))
            .toList();
    try (var admin = Admin.create(Map.<String, Object>copyOf(access().settings()))) {
      admin.createTopics(topics).all().get();
      access().awaitLeaders(topics.stream().map(NewTopic::name).toList(), Duration.ofSeconds(30));
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
            "auto.create.topics.enable", "false"));
    properties.putAll(ONE_NODE);
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
