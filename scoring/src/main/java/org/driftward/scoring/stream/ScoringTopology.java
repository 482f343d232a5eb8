package org.driftward.scoring.stream;

import java.util.Map;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.Serdes;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.apache.kafka.common.utils.Bytes;
import org.apache.kafka.streams.AutoOffsetReset;
import org.apache.kafka.streams.Topology;
import org.apache.kafka.streams.state.KeyValueStore;
import org.apache.kafka.streams.state.StoreBuilder;
import org.apache.kafka.streams.state.Stores;
import org.driftward.ingest.contract.Topic;

/**
 * What is connected to what: three topics of the house and one of our own lead to one processor
 * with one store.
 *
 * <p>All are keyed by encounter and have the same number of partitions, so one task has everything
 * about an encounter. The two encounters of a merge may be in two tasks; what moves between them
 * goes over {@link #MOVES_TOPIC}. Keys are text and values bytes, neither of which can fail to be
 * read: what a value holds is judged in the processor, where a bad one can be set aside.
 */
final class ScoringTopology {

  static final String STORE = "timeline";
  static final String MOVES_TOPIC = "driftward.scoring-moves";

  /** Names of sinks. */
  static final String SNAPSHOTS = "snapshots";

  static final String REJECTED = "rejected";
  static final String MOVES = "moves";

  private static final String TIMELINE = "timeline";

  private ScoringTopology() {}

  static Topology of(ScoringParts parts) {
    var topology = new Topology();
    source(topology, "assessments", Topic.ASSESSMENTS.topic());
    source(topology, "encounters", Topic.ENCOUNTERS.topic());
    source(topology, "care-plans", Topic.CARE_PLANS.topic());
    source(topology, "moved", MOVES_TOPIC);
    topology.addProcessor(
        TIMELINE,
        () -> new TimelineProcessor(parts),
        "assessments",
        "encounters",
        "care-plans",
        "moved");
    topology.addStateStore(store(), TIMELINE);
    sink(topology, SNAPSHOTS, Topic.SNAPSHOTS.topic());
    sink(topology, REJECTED, Topic.REJECTED.topic());
    sink(topology, MOVES, MOVES_TOPIC);
    return topology;
  }

  private static void source(Topology topology, String name, String topic) {
    topology.addSource(
        AutoOffsetReset.earliest(),
        name,
        new StringDeserializer(),
        new ByteArrayDeserializer(),
        topic);
  }

  private static void sink(Topology topology, String name, String topic) {
    topology.addSink(name, topic, new StringSerializer(), new ByteArraySerializer(), TIMELINE);
  }

  /** Not cached: a key is rarely written twice, and the cache would only copy. */
  private static StoreBuilder<KeyValueStore<Bytes, byte[]>> store() {
    return Stores.keyValueStoreBuilder(
            Stores.persistentKeyValueStore(STORE), Serdes.Bytes(), Serdes.ByteArray())
        .withCachingDisabled()
        .withLoggingEnabled(Map.of());
  }
}
