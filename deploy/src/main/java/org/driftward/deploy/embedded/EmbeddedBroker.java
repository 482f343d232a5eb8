package org.driftward.deploy.embedded;

import java.io.IOException;
import java.io.OutputStream;
import java.io.PrintStream;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.stream.Stream;
import kafka.server.KafkaConfig;
import kafka.server.KafkaRaftServer;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.common.Uuid;
import org.apache.kafka.common.acl.AccessControlEntry;
import org.apache.kafka.common.acl.AclBinding;
import org.apache.kafka.common.acl.AclOperation;
import org.apache.kafka.common.acl.AclPermissionType;
import org.apache.kafka.common.resource.PatternType;
import org.apache.kafka.common.resource.ResourcePattern;
import org.apache.kafka.common.resource.ResourceType;
import org.apache.kafka.common.utils.Time;
import org.apache.kafka.metadata.authorizer.StandardAuthorizer;
import org.apache.kafka.metadata.storage.Formatter;
import org.driftward.ingest.contract.Topic;
import org.jspecify.annotations.Nullable;

/**
 * A real Kafka broker in this process: KRaft in combined mode, one node, on loopback. Its folder is
 * formatted once and found again; its ports are new at every start.
 */
public final class EmbeddedBroker implements Listening {

  /** Kafka writes it last of all when it formats a folder. */
  private static final String FORMATTED = "meta.properties";

  private static final int NODE = 1;
  private static final String CLIENTS = "CLIENTS";
  private static final String CONTROLLER = "CONTROLLER";
  private static final String FEEDS = "User:feeds";

  private final KafkaRaftServer server;
  private final int port;
  private final String password;

  private EmbeddedBroker(KafkaRaftServer server, int port, String password) {
    this.server = server;
    this.port = port;
    this.password = password;
  }

  /**
   * Starts and returns once clients can connect.
   *
   * @param folder of the log segments
   * @param wantedPort for clients; 0 for any free one
   * @param password that clients must know, so that nobody else on this machine reads the topics
   */
  public static EmbeddedBroker start(Path folder, int wantedPort, String password) {
    return start(folder, wantedPort, password, null);
  }

  /**
   * Likewise, with an account for feeds.
   *
   * @param feeds password of the account {@code feeds}, which may write the inbox and nothing else;
   *     null for no such account
   */
  public static EmbeddedBroker start(
      Path folder, int wantedPort, String password, @Nullable String feeds) {
    try {
      if (!Files.exists(folder.resolve(FORMATTED))) {
        format(folder);
      }
      int port = FreePort.choose(wantedPort);
      var config =
          new KafkaConfig(settings(folder, port, FreePort.choose(0), password, feeds), false);
      var server = new KafkaRaftServer(config, Time.SYSTEM);
      server.startup();
      var broker = new EmbeddedBroker(server, port, password);
      if (feeds != null) {
        broker.letFeedsIn();
      }
      return broker;
    } catch (Exception e) {
      throw new StartException("The embedded Kafka broker does not start: " + e.getMessage(), e);
    }
  }

  /** Kafka's own client settings, each behind {@code kafka.}. */
  @Override
  public Map<String, String> properties() {
    return Map.of(
        "kafka.bootstrap.servers",
        "127.0.0.1:" + port,
        "kafka.security.protocol",
        "SASL_PLAINTEXT",
        "kafka.sasl.mechanism",
        "PLAIN",
        "kafka.sasl.jaas.config",
        login(password) + ";");
  }

  /** Kafka keeps it; to say it again changes nothing. */
  private void letFeedsIn() throws ExecutionException, InterruptedException {
    var inbox = new ResourcePattern(ResourceType.TOPIC, Topic.INBOX.topic(), PatternType.LITERAL);
    var rules =
        Stream.of(AclOperation.WRITE, AclOperation.DESCRIBE)
            .map(what -> new AccessControlEntry(FEEDS, "*", what, AclPermissionType.ALLOW))
            .map(entry -> new AclBinding(inbox, entry))
            .toList();
    var settings = new HashMap<String, Object>();
    properties().forEach((name, value) -> settings.put(name.substring("kafka.".length()), value));
    try (var admin = Admin.create(settings)) {
      admin.createAcls(rules).all().get();
    }
  }

  @Override
  public int port() {
    return port;
  }

  @Override
  public void close() {
    server.shutdown();
    server.awaitShutdown();
  }

  private static void format(Path folder) throws Exception {
    try (var silent =
        new PrintStream(OutputStream.nullOutputStream(), false, StandardCharsets.UTF_8)) {
      new Formatter()
          .setPrintStream(silent)
          .setClusterId(Uuid.randomUuid().toString())
          .setNodeId(NODE)
          .setControllerListenerName(CONTROLLER)
          .setDirectories(List.of(folder.toString()))
          .setMetadataLogDirectory(folder.toString())
          .run();
    }
  }

  private static Map<String, String> settings(
      Path folder, int port, int controllerPort, String password, @Nullable String feeds)
      throws IOException {
    var all = new HashMap<>(listeners(port, controllerPort, password, feeds));
    all.put("log.dirs", folder.toString());
    all.putAll(SINGLE_NODE);
    all.putAll(NOTHING_IS_FORGOTTEN);
    all.putAll(SMALL);
    return all;
  }

  private static Map<String, String> listeners(
      int port, int controllerPort, String password, @Nullable String feeds) {
    var all = new HashMap<String, String>();
    var clients = CLIENTS + "://127.0.0.1:" + port;
    all.put("node.id", String.valueOf(NODE));
    all.put("process.roles", "broker,controller");
    all.put("controller.quorum.voters", NODE + "@127.0.0.1:" + controllerPort);
    all.put("listeners", clients + "," + CONTROLLER + "://127.0.0.1:" + controllerPort);
    all.put("advertised.listeners", clients);
    all.put("inter.broker.listener.name", CLIENTS);
    all.put("controller.listener.names", CONTROLLER);
    all.put(
        "listener.security.protocol.map",
        CLIENTS + ":SASL_PLAINTEXT," + CONTROLLER + ":SASL_PLAINTEXT");
    all.put("sasl.enabled.mechanisms", "PLAIN");
    all.put("sasl.mechanism.inter.broker.protocol", "PLAIN");
    all.put("sasl.mechanism.controller.protocol", "PLAIN");
    var jaas = login(password) + " user_driftward=\"" + password + "\"";
    var others = feeds == null ? "" : " user_feeds=\"" + feeds + "\"";
    all.put("listener.name.clients.plain.sasl.jaas.config", jaas + others + ";");
    all.put("listener.name.controller.plain.sasl.jaas.config", jaas + ";");
    all.put("authorizer.class.name", StandardAuthorizer.class.getName());
    all.put("super.users", "User:driftward");
    return all;
  }

  private static String login(String password) {
    return "org.apache.kafka.common.security.plain.PlainLoginModule required"
        + " username=\"driftward\" password=\""
        + password
        + "\"";
  }

  /** One node answers for everything, and need not wait for others. */
  private static final Map<String, String> SINGLE_NODE =
      Map.of(
          "offsets.topic.replication.factor", "1",
          "transaction.state.log.replication.factor", "1",
          "transaction.state.log.min.isr", "1",
          "share.coordinator.state.topic.replication.factor", "1",
          "share.coordinator.state.topic.min.isr", "1",
          "min.insync.replicas", "1",
          "group.initial.rebalance.delay.ms", "0",
          // After a crash the new broker waits until the session of the old one has run out.
          "broker.session.timeout.ms", "6000",
          "broker.heartbeat.interval.ms", "1000");

  /**
   * Topics say themselves what they may forget. Record timestamps are clinical times: a late record
   * is old and the demo's clock runs ahead, and neither is a reason to refuse.
   */
  private static final Map<String, String> NOTHING_IS_FORGOTTEN =
      Map.of(
          "auto.create.topics.enable",
          "false",
          "log.retention.ms",
          "-1",
          "log.message.timestamp.before.max.ms",
          String.valueOf(Long.MAX_VALUE),
          "log.message.timestamp.after.max.ms",
          String.valueOf(Long.MAX_VALUE));

  /** For one hospital on one machine. */
  private static final Map<String, String> SMALL =
      Map.of(
          "offsets.topic.num.partitions", "6",
          "transaction.state.log.num.partitions", "6",
          "num.network.threads", "2",
          "num.io.threads", "4",
          "background.threads", "4",
          "message.max.bytes", String.valueOf(4 << 20),
          "log.cleaner.dedupe.buffer.size", String.valueOf(16 << 20),
          "log.segment.bytes", String.valueOf(128 << 20));
}
