package org.driftward.scoring.stream;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.net.InetAddress;
import java.net.ServerSocket;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import kafka.server.KafkaConfig;
import kafka.server.KafkaRaftServer;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.common.Uuid;
import org.apache.kafka.common.utils.Time;
import org.apache.kafka.metadata.storage.Formatter;
import org.driftward.ingest.contract.KafkaAccess;
import org.driftward.ingest.contract.Topic;

/** A real Kafka broker of one node, on loopback. */
public final class RealBroker implements AutoCloseable {

  private final KafkaRaftServer server;
  private final KafkaAccess access;

  private RealBroker(KafkaRaftServer server, int port) {
    this.server = server;
    this.access = new KafkaAccess(Map.of("bootstrap.servers", "127.0.0.1:" + port));
  }

  public static RealBroker start(Path folder) throws Exception {
    try (var silent =
        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8)) {
      new Formatter()
          .setPrintStream(silent)
          .setClusterId(Uuid.randomUuid().toString())
          .setNodeId(1)
          .setControllerListenerName("CONTROLLER")
          .setDirectories(List.of(folder.toString()))
          .setMetadataLogDirectory(folder.toString())
          .run();
    }
    int port = freePort();
    int controllerPort = freePort();
    var clients = "CLIENTS://127.0.0.1:" + port;
    var settings = new HashMap<String, String>();
    settings.put("node.id", "1");
    settings.put("process.roles", "broker,controller");
    settings.put("controller.quorum.voters", "1@127.0.0.1:" + controllerPort);
    settings.put("listeners", clients + ",CONTROLLER://127.0.0.1:" + controllerPort);
    settings.put("advertised.listeners", clients);
    settings.put("inter.broker.listener.name", "CLIENTS");
    settings.put("controller.listener.names", "CONTROLLER");
    settings.put("listener.security.protocol.map", "CLIENTS:PLAINTEXT,CONTROLLER:PLAINTEXT");
    settings.put("log.dirs", folder.toString());
    settings.put("auto.create.topics.enable", "false");
    settings.put("offsets.topic.num.partitions", "2");
    settings.put("offsets.topic.replication.factor", "1");
    settings.put("transaction.state.log.num.partitions", "2");
    settings.put("transaction.state.log.replication.factor", "1");
    settings.put("transaction.state.log.min.isr", "1");
    settings.put("share.coordinator.state.topic.replication.factor", "1");
    settings.put("share.coordinator.state.topic.min.isr", "1");
    settings.put("group.initial.rebalance.delay.ms", "0");
    var server = new KafkaRaftServer(new KafkaConfig(settings, false), Time.SYSTEM);
    server.startup();
    return new RealBroker(server, port);
  }

  public KafkaAccess access() {
    return access;
  }

  /** The topics of the house. */
  public void makeTopics(int partitions) throws Exception {
    try (var admin = Admin.create(Map.copyOf(access.settings()))) {
      admin
          .createTopics(
              Stream.of(Topic.values())
                  .map(topic -> new NewTopic(topic.topic(), partitions, (short) 1))
                  .toList())
          .all()
          .get();
    }
  }

  @Override
  public void close() {
    server.shutdown();
    server.awaitShutdown();
  }

  private static int freePort() throws IOException {
    try (var socket = new ServerSocket(0, 1, InetAddress.getLoopbackAddress())) {
      return socket.getLocalPort();
    }
  }
}
