package org.driftward.deploy.kafka;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;

import io.smallrye.config.SmallRyeConfigBuilder;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.common.config.ConfigResource;
import org.driftward.deploy.config.DeploySettings;
import org.driftward.deploy.embedded.EmbeddedBroker;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.Topic;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** On the real broker. */
class TopicKeeperTest {

  @TempDir static Path folder;
  private static EmbeddedBroker broker;

  @BeforeAll
  static void start() {
    broker = EmbeddedBroker.start(folder, 0, "between-us");
  }

  @AfterAll
  static void stop() {
    broker.close();
  }

  @Test
  void shouldMakeWhatIsMissingAndLeaveWhatIsThere() throws Exception {
    try (var admin = Admin.create(Map.copyOf(access().settings()))) {
      var byHand = new NewTopic(Topic.EPISODES.topic(), 2, (short) 1);
      admin.createTopics(List.of(byHand)).all().get();

      keeper(Map.of()).prepare();
      keeper(Map.of()).prepare();

      var names = Arrays.stream(Topic.values()).map(Topic::topic).toList();
      var found = admin.describeTopics(names).allTopicNames().get();
      assertThat(found.get(Topic.EPISODES.topic()).partitions()).hasSize(2);
      assertThat(found.get(Topic.ASSESSMENTS.topic()).partitions()).hasSize(6);
      assertThat(setting(admin, Topic.ENCOUNTERS, "cleanup.policy")).isEqualTo("compact");
      assertThat(setting(admin, Topic.ASSESSMENTS, "retention.ms")).isEqualTo("-1");
    }
  }

  @Test
  void shouldForgetOnlySnapshotsWhenToldTo() {
    var keeper = keeper(Map.of("driftward.topics.snapshot-retention", "PT1H"));

    assertThat(keeper.describe(Topic.SNAPSHOTS).configs()).containsEntry("retention.ms", "3600000");
    assertThat(keeper.describe(Topic.ASSESSMENTS).configs()).containsEntry("retention.ms", "-1");
  }

  @Test
  void shouldSayThatKafkaDoesNotAnswer() {
    var nobody =
        new KafkaAccess(
            Map.of(
                "bootstrap.servers",
                "127.0.0.1:1",
                "default.api.timeout.ms",
                "1000",
                "request.timeout.ms",
                "500"));

    assertThatExceptionOfType(ExecutionException.class)
        .isThrownBy(() -> new TopicKeeper(nobody, settings(Map.of())).prepare());
  }

  private static TopicKeeper keeper(Map<String, String> properties) {
    return new TopicKeeper(access(), settings(properties));
  }

  private static KafkaAccess access() {
    var settings = new HashMap<String, String>();
    broker
        .properties()
        .forEach((name, value) -> settings.put(name.substring("kafka.".length()), value));
    return new KafkaAccess(settings);
  }

  private static DeploySettings settings(Map<String, String> properties) {
    return new SmallRyeConfigBuilder()
        .withMapping(DeploySettings.class)
        .withDefaultValues(properties)
        .build()
        .getConfigMapping(DeploySettings.class);
  }

  private static String setting(Admin admin, Topic topic, String name) throws Exception {
    var resource = new ConfigResource(ConfigResource.Type.TOPIC, topic.topic());
    return admin.describeConfigs(List.of(resource)).all().get().get(resource).get(name).value();
  }
}
