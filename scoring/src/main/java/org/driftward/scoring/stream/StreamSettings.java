package org.driftward.scoring.stream;

import java.util.HashMap;
import java.util.Map;
import java.util.Properties;
import org.apache.kafka.clients.consumer.ConsumerConfig;
import org.apache.kafka.clients.producer.ProducerConfig;
import org.apache.kafka.streams.StreamsConfig;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.config.ScoringConfig;

/** Our settings as those of Kafka Streams. */
final class StreamSettings {

  /** How long the group waits for a process that was killed before it gives its work to others. */
  private static final int SESSION_TIMEOUT_MILLIS = 15_000;

  private static final int BATCH_BYTES = 256 << 10;

  private StreamSettings() {}

  static Properties of(KafkaAccess access, ScoringConfig.Streams config) {
    var settings = new Properties();
    settings.putAll(access.settings());
    settings.put(StreamsConfig.APPLICATION_ID_CONFIG, config.applicationId());
    settings.put(StreamsConfig.STATE_DIR_CONFIG, config.stateDir().toString());
    settings.put(StreamsConfig.PROCESSING_GUARANTEE_CONFIG, StreamsConfig.EXACTLY_ONCE_V2);
    settings.put(StreamsConfig.COMMIT_INTERVAL_MS_CONFIG, config.commitInterval().toMillis());
    settings.put(StreamsConfig.NUM_STREAM_THREADS_CONFIG, config.threads());
    settings.put(StreamsConfig.NUM_STANDBY_REPLICAS_CONFIG, config.standbyReplicas());
    settings.put(StreamsConfig.REPLICATION_FACTOR_CONFIG, (int) config.replication());
    settings.put(
        StreamsConfig.ROCKSDB_CONFIG_SETTER_CLASS_CONFIG, BoundedStoreMemory.class.getName());
    settings.put(BoundedStoreMemory.MEBIBYTES, config.storeMemory());
    // Record order between topics does not matter here, so no topic is waited for.
    settings.put(StreamsConfig.MAX_TASK_IDLE_MS_CONFIG, StreamsConfig.MAX_TASK_IDLE_MS_DISABLED);
    settings.put(StreamsConfig.consumerPrefix(ConsumerConfig.MAX_POLL_RECORDS_CONFIG), 500);
    settings.put(
        StreamsConfig.mainConsumerPrefix(ConsumerConfig.GROUP_INSTANCE_ID_CONFIG),
        InstanceName.in(config.stateDir()));
    settings.put(
        StreamsConfig.consumerPrefix(ConsumerConfig.SESSION_TIMEOUT_MS_CONFIG),
        SESSION_TIMEOUT_MILLIS);
    settings.put(StreamsConfig.producerPrefix(ProducerConfig.COMPRESSION_TYPE_CONFIG), "lz4");
    // Snapshots are kilobytes each and much alike: large batches are fewer and compress better.
    settings.put(StreamsConfig.producerPrefix(ProducerConfig.BATCH_SIZE_CONFIG), BATCH_BYTES);
    // A record set aside is kept whole, in Base64.
    settings.put(
        StreamsConfig.producerPrefix(ProducerConfig.MAX_REQUEST_SIZE_CONFIG),
        Topic.REJECTED.largestRecord());
    return settings;
  }

  static Map<String, Object> admin(KafkaAccess access) {
    return new HashMap<>(access.settings());
  }
}
