package org.driftward.deploy.bench;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.lang.ProcessBuilder.Redirect;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.TopicPartition;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.driftward.ground.kafka.KafkaAccess;

/** A real broker as a child process, so that its cost can be told from its clients'. */
final class BrokerProcess implements AutoCloseable {

  static final String READY = "broker at ";

  private static final String PASSWORD = "between-us";

  private final Process process;
  private final KafkaAccess access;
  private final Admin admin;

  private BrokerProcess(Process process, String address) {
    this.process = process;
    this.access =
        new KafkaAccess(
            Map.of(
                "bootstrap.servers",
                address,
                "security.protocol",
                "SASL_PLAINTEXT",
                "sasl.mechanism",
                "PLAIN",
                "sasl.jaas.config",
                "org.apache.kafka.common.security.plain.PlainLoginModule required"
                    + " username=\"driftward\" password=\""
                    + PASSWORD
                    + "\";"));
    this.admin = Admin.create(new HashMap<>(access.settings()));
  }

  static BrokerProcess start(Path folder) throws IOException {
    var java = Path.of(System.getProperty("java.home"), "bin", "java").toString();
    var process =
        new ProcessBuilder(
                java,
                "-Xmx1g",
                "-XX:+UseSerialGC",
                "-cp",
                System.getProperty("java.class.path"),
                BrokerMain.class.getName(),
                folder.toString(),
                PASSWORD)
            .redirectError(Redirect.DISCARD)
            .start();
    var out = new BufferedReader(process.inputReader(StandardCharsets.UTF_8));
    for (var line = out.readLine(); line != null; line = out.readLine()) {
      if (line.startsWith(READY)) {
        var rest = new Thread(() -> out.lines().forEach(ignored -> {}), "broker-output");
        rest.setDaemon(true);
        rest.start();
        return new BrokerProcess(process, line.substring(READY.length()));
      }
    }
    throw new IOException("the broker did not start");
  }

  KafkaAccess access() {
    return access;
  }

  void makeTopics(List<String> names, int partitions)
      throws ExecutionException, InterruptedException {
    admin
        .createTopics(
            names.stream().map(name -> new NewTopic(name, partitions, (short) 1)).toList())
        .all()
        .get();
    access.awaitLeaders(names, Duration.ofSeconds(30));
  }

  /** CPU time of the broker so far. */
  Duration cpu() {
    return process.toHandle().info().totalCpuDuration().orElseThrow();
  }

  /** Bytes of all logs on its disk. */
  long bytes() throws ExecutionException, InterruptedException {
    return admin.describeLogDirs(List.of(1)).allDescriptions().get().values().stream()
        .flatMap(folders -> folders.values().stream())
        .flatMap(folder -> folder.replicaInfos().values().stream())
        .mapToLong(replica -> replica.size())
        .sum();
  }

  /** Records of a topic that a group has committed to have read. */
  long committed(String group, String topic) throws ExecutionException, InterruptedException {
    return admin
        .listConsumerGroupOffsets(group)
        .partitionsToOffsetAndMetadata()
        .get()
        .entrySet()
        .stream()
        .filter(entry -> entry.getKey().topic().equals(topic) && entry.getValue() != null)
        .mapToLong(entry -> entry.getValue().offset())
        .sum();
  }

  List<TopicPartition> partitions(String topic) throws ExecutionException, InterruptedException {
    return admin
        .describeTopics(List.of(topic))
        .topicNameValues()
        .get(topic)
        .get()
        .partitions()
        .stream()
        .map(partition -> new TopicPartition(topic, partition.partition()))
        .toList();
  }

  /** Reads these partitions from their beginning, without a group. */
  KafkaConsumer<String, byte[]> reader(List<TopicPartition> partitions) {
    var settings = new HashMap<String, Object>(access.settings());
    var consumer =
        new KafkaConsumer<>(settings, new StringDeserializer(), new ByteArrayDeserializer());
    consumer.assign(partitions);
    consumer.seekToBeginning(partitions);
    return consumer;
  }

  @Override
  public void close() {
    admin.close(Duration.ofSeconds(5));
    try {
      process.getOutputStream().close();
      if (!process.waitFor(30, TimeUnit.SECONDS)) {
        process.destroyForcibly();
      }
    } catch (IOException e) {
      throw new UncheckedIOException(e);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      process.destroyForcibly();
    }
  }
}
