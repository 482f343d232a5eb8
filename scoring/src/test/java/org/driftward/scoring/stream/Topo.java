package org.driftward.scoring.stream;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.time.Duration;
import java.time.Instant;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Properties;
import org.apache.kafka.common.header.Headers;
import org.apache.kafka.common.header.internals.RecordHeaders;
import org.apache.kafka.common.serialization.ByteArrayDeserializer;
import org.apache.kafka.common.serialization.ByteArraySerializer;
import org.apache.kafka.common.serialization.BytesDeserializer;
import org.apache.kafka.common.serialization.StringDeserializer;
import org.apache.kafka.common.serialization.StringSerializer;
import org.apache.kafka.common.utils.Bytes;
import org.apache.kafka.streams.StreamsConfig;
import org.apache.kafka.streams.TestOutputTopic;
import org.apache.kafka.streams.TopologyTestDriver;
import org.apache.kafka.streams.state.KeyValueStore;
import org.apache.kafka.streams.test.TestRecord;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.Snapshot;
import org.driftward.scoring.core.timeline.Arrival;
import org.driftward.scoring.core.timeline.Arrival.Observed;
import org.driftward.scoring.core.timeline.Arrival.Signed;
import org.driftward.scoring.core.timeline.Arrival.Told;
import org.driftward.scoring.core.timeline.Edition;
import org.driftward.scoring.core.timeline.Fixtures;
import org.driftward.scoring.core.timeline.Listener;
import org.driftward.scoring.core.timeline.Timeline;
import org.driftward.scoring.stream.state.Memory;

/**
 * The topology in the test driver: records in, snapshots out. The driver deletes its files when it
 * is closed, so a restart is what it is after a machine was lost: the store is made again from its
 * changelog.
 */
final class Topo implements AutoCloseable {

  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);
  private static final JsonFormat<Encounter> ENCOUNTER = JsonFormat.of(Encounter.class);
  private static final JsonFormat<CarePlan> CARE_PLAN = JsonFormat.of(CarePlan.class);
  private static final JsonFormat<Snapshot> SNAPSHOT = JsonFormat.of(Snapshot.class);
  private static final JsonFormat<Rejection> REJECTION = JsonFormat.of(Rejection.class);

  private static final String CHANGELOG = "scoring-test-timeline-changelog";

  private final Path state;
  private final Map<Bytes, byte[]> changelog = new HashMap<>();
  private final Memory memory;
  private Timeline timeline = Fixtures.timeline();
  private final Listener listener = new Listener();
  private final SimpleMeterRegistry meters = new SimpleMeterRegistry();
  private TopologyTestDriver driver;
  private TestOutputTopic<String, byte[]> snapshots;
  private TestOutputTopic<String, byte[]> rejected;

  Topo(Path state) {
    this(state, new Memory(100, 100));
  }

  Topo(Path state, Memory memory) {
    this.state = state;
    this.memory = memory;
    this.driver = open();
    this.snapshots = output(driver, Topic.SNAPSHOTS);
    this.rejected = output(driver, Topic.REJECTED);
  }

  void restart() {
    snapshots();
    readChangelog();
    driver.close();
    driver = open();
    snapshots = output(driver, Topic.SNAPSHOTS);
    rejected = output(driver, Topic.REJECTED);
    KeyValueStore<Bytes, byte[]> store = driver.getKeyValueStore(ScoringTopology.STORE);
    changelog.forEach(store::put);
  }

  /** From now on the process knows one more edition. */
  void adopt(Edition edition) {
    timeline = timeline.under(timeline.editions().with(edition));
  }

  void passes(Duration wallClock) {
    driver.advanceWallClockTime(wallClock);
  }

  private void readChangelog() {
    driver
        .createOutputTopic(CHANGELOG, new BytesDeserializer(), new ByteArrayDeserializer())
        .readKeyValuesToList()
        .forEach(
            change -> {
              if (change.value == null) {
                changelog.remove(change.key);
              } else {
                changelog.put(change.key, change.value);
              }
            });
  }

  void send(Arrival... arrivals) {
    for (var arrival : arrivals) {
      if (arrival instanceof Observed observed) {
        send(observed.assessment());
      } else if (arrival instanceof Told told) {
        var encounter = told.encounter();
        send(Topic.ENCOUNTERS, encounter.id(), ENCOUNTER.write(encounter), new RecordHeaders());
      } else if (arrival instanceof Signed signed) {
        var plan = signed.plan();
        send(Topic.CARE_PLANS, plan.encounter(), CARE_PLAN.write(plan), new RecordHeaders());
      }
    }
  }

  void send(Assessment assessment) {
    send(
        Topic.ASSESSMENTS,
        assessment.encounter(),
        ASSESSMENT.write(assessment),
        new RecordHeaders());
  }

  void send(Assessment assessment, Instant acceptedAt) {
    var stamp = Long.toString(acceptedAt.toEpochMilli()).getBytes(StandardCharsets.US_ASCII);
    send(
        Topic.ASSESSMENTS,
        assessment.encounter(),
        ASSESSMENT.write(assessment),
        new RecordHeaders().add("accepted-at", stamp));
  }

  void send(Topic topic, String key, byte[] value, Headers headers) {
    driver
        .createInputTopic(topic.topic(), new StringSerializer(), new ByteArraySerializer())
        .pipeInput(new TestRecord<>(key, value, headers, 1_767_000_000_000L));
  }

  /** What was sent since the last call. */
  List<Snapshot> snapshots() {
    var sent = new ArrayList<Snapshot>();
    for (var each : snapshots.readRecordsToList()) {
      var snapshot = SNAPSHOT.read(each.value());
      if (!snapshot.encounter().equals(each.key())) {
        throw new AssertionError("a snapshot under the key " + each.key());
      }
      listener.hear(snapshot);
      sent.add(snapshot);
    }
    return sent;
  }

  Snapshot onlySnapshot() {
    var sent = snapshots();
    if (sent.size() != 1) {
      throw new AssertionError("not one snapshot but " + sent);
    }
    return sent.get(0);
  }

  List<Rejection> rejected() {
    return rejected.readValuesToList().stream().map(REJECTION::read).toList();
  }

  static Score news2(Snapshot snapshot) {
    return snapshot.scores().stream()
        .filter(score -> score.id().equals("news2"))
        .findFirst()
        .orElseThrow();
  }

  /** Everything ever heard. */
  Listener listener() {
    snapshots();
    return listener;
  }

  double counted(String meter) {
    return meters.get(meter).counter().count();
  }

  @Override
  public void close() {
    driver.close();
  }

  private TopologyTestDriver open() {
    var settings = new Properties();
    settings.put(StreamsConfig.APPLICATION_ID_CONFIG, "scoring-test");
    settings.put(StreamsConfig.STATE_DIR_CONFIG, state.toString());
    settings.put(
        StreamsConfig.ROCKSDB_CONFIG_SETTER_CLASS_CONFIG, BoundedStoreMemory.class.getName());
    var parts =
        new ScoringParts(() -> timeline, Fixtures.CATALOGUE, new ScoringMetrics(meters), memory);
    return new TopologyTestDriver(ScoringTopology.of(parts), settings);
  }

  private static TestOutputTopic<String, byte[]> output(TopologyTestDriver driver, Topic topic) {
    return driver.createOutputTopic(
        topic.topic(), new StringDeserializer(), new ByteArrayDeserializer());
  }
}
