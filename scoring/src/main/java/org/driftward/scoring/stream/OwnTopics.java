package org.driftward.scoring.stream;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.clients.admin.NewTopic;
import org.apache.kafka.clients.admin.TopicDescription;
import org.apache.kafka.common.errors.TopicExistsException;
import org.apache.kafka.common.errors.UnknownTopicOrPartitionException;
import org.driftward.ingest.contract.Topic;

/**
 * Kafka Streams gives up when a topic it reads is missing. So scoring waits for the topics of the
 * house, and then makes those of its own.
 */
final class OwnTopics {

  private static final List<Topic> NEEDED =
      List.of(
          Topic.ASSESSMENTS, Topic.ENCOUNTERS, Topic.CARE_PLANS, Topic.SNAPSHOTS, Topic.REJECTED);

  private OwnTopics() {}

  /**
   * Whether everything the topology needs is there now.
   *
   * @param replication of a topic made here
   * @throws IllegalStateException if the topics of the house differ in their partitions
   * @throws ExecutionException if Kafka does not answer
   */
  static boolean ready(Admin admin, short replication)
      throws ExecutionException, InterruptedException {
    var partitions = new ArrayList<Integer>();
    for (var topic : NEEDED) {
      var found = describe(admin, topic.topic());
      if (found.isEmpty()) {
        return false;
      }
      if (topic != Topic.REJECTED) {
        partitions.add(found.get().partitions().size());
      }
    }
    if (partitions.stream().distinct().count() != 1) {
      throw new IllegalStateException(
          "topics keyed by encounter differ in their partitions: " + partitions);
    }
    if (describe(admin, ScoringTopology.MOVES_TOPIC).isEmpty()) {
      make(admin, ScoringTopology.MOVES_TOPIC, partitions.get(0), replication);
    }
    if (describe(admin, EditionTopic.TOPIC).isEmpty()) {
      make(admin, EditionTopic.TOPIC, 1, replication);
    }
    return true;
  }

  private static void make(Admin admin, String name, int partitions, short replication)
      throws ExecutionException, InterruptedException {
    var replicas = replication < 0 ? Optional.<Short>empty() : Optional.of(replication);
    var topic = new NewTopic(name, Optional.of(partitions), replicas);
    var settings = new HashMap<String, String>();
    // A move may wait for its task as long as it takes, and an edition is never over.
    settings.put("retention.ms", "-1");
    try {
      admin.createTopics(List.of(topic.configs(settings))).all().get();
    } catch (ExecutionException e) {
      if (!(e.getCause() instanceof TopicExistsException)) {
        throw e;
      }
    }
  }

  private static Optional<TopicDescription> describe(Admin admin, String topic)
      throws ExecutionException, InterruptedException {
    try {
      return Optional.of(admin.describeTopics(List.of(topic)).topicNameValues().get(topic).get());
    } catch (ExecutionException e) {
      if (e.getCause() instanceof UnknownTopicOrPartitionException) {
        return Optional.empty();
      }
      throw e;
    }
  }
}
