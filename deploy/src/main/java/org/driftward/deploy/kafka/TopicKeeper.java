package org.driftward.deploy.kafka;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.common.KafkaFuture;
import org.apache.kafka.common.config.TopicConfig;
import org.apache.kafka.common.errors.TopicExistsException;
import org.driftward.deploy.config.DeploySettings;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.Topic;

/** Makes the topics that do not exist yet, and leaves those that do as they are. */
@Singleton
public class TopicKeeper {

  private static final String FOR_EVER = "-1";
  private static final Duration PATIENCE = Duration.ofSeconds(30);

  private final KafkaAccess access;
  private final DeploySettings.Topics settings;

  @Inject
  TopicKeeper(KafkaAccess access, DeploySettings settings) {
    this.access = access;
    this.settings = settings.topics();
  }

  /**
   * Returns once every topic exists, and those made now take records.
   *
   * @throws ExecutionException if Kafka does not answer or refuses
   */
  public void prepare() throws ExecutionException, InterruptedException {
    var wanted = new ArrayList<NewTopic>();
    for (var topic : Topic.values()) {
      wanted.add(describe(topic));
    }
    var made = new ArrayList<String>();
    try (var admin = Admin.create(Map.copyOf(access.settings()))) {
      for (var topic : admin.createTopics(wanted).values().entrySet()) {
        if (isNew(topic.getValue())) {
          made.add(topic.getKey());
        }
      }
    }
    // Of an old topic some leader may be away for longer, and the others still serve.
    access.awaitLeaders(made, PATIENCE);
  }

  NewTopic describe(Topic topic) {
    var configs = new HashMap<String, String>();
    configs.put(TopicConfig.MAX_MESSAGE_BYTES_CONFIG, String.valueOf(topic.largestRecord()));
    // Timestamps are clinical times; neither an old nor an early one is a reason to refuse.
    configs.put(TopicConfig.MESSAGE_TIMESTAMP_BEFORE_MAX_MS_CONFIG, String.valueOf(Long.MAX_VALUE));
    configs.put(TopicConfig.MESSAGE_TIMESTAMP_AFTER_MAX_MS_CONFIG, String.valueOf(Long.MAX_VALUE));
    if (topic.compacted()) {
      configs.put(TopicConfig.CLEANUP_POLICY_CONFIG, TopicConfig.CLEANUP_POLICY_COMPACT);
    } else {
      configs.put(TopicConfig.CLEANUP_POLICY_CONFIG, TopicConfig.CLEANUP_POLICY_DELETE);
      configs.put(TopicConfig.RETENTION_MS_CONFIG, retention(topic));
      configs.put(TopicConfig.RETENTION_BYTES_CONFIG, FOR_EVER);
    }
    return new NewTopic(topic.topic(), settings.partitions(), settings.replication())
        .configs(configs);
  }

  /** Snapshots can be computed again from the assessments; nothing else can. */
  private String retention(Topic topic) {
    if (topic != Topic.SNAPSHOTS) {
      return FOR_EVER;
    }
    return settings
        .snapshotRetention()
        .map(retention -> String.valueOf(retention.toMillis()))
        .orElse(FOR_EVER);
  }

  private static boolean isNew(KafkaFuture<Void> made)
      throws ExecutionException, InterruptedException {
    try {
      made.get();
      return true;
    } catch (ExecutionException e) {
      if (e.getCause() instanceof TopicExistsException) {
        return false;
      }
      throw e;
    }
  }
}
