package org.driftward.deploy.bench;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Duration;
import java.util.List;
import java.util.Properties;
import java.util.concurrent.ExecutionException;
import java.util.function.Consumer;
import java.util.function.Predicate;
import org.apache.kafka.clients.consumer.KafkaConsumer;
import org.apache.kafka.common.serialization.Serdes;
import org.apache.kafka.streams.KafkaStreams;
import org.apache.kafka.streams.StreamsBuilder;
import org.apache.kafka.streams.StreamsConfig;
import org.apache.kafka.streams.kstream.Consumed;
import org.apache.kafka.streams.kstream.Produced;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Topic;
import org.driftward.scoring.definition.ScoreBooks;
import org.driftward.scoring.edition.EditionsInForce;
import org.driftward.scoring.policy.PolicyFile;
import org.driftward.scoring.stream.ScoringStreams;

/** The four ways. Each reads the same topic from its beginning. */
final class Ways {

  private static final String INPUT = Topic.ASSESSMENTS.topic();
  private static final String BARE_NAME = "bare consumer and producer";
  private static final String THROUGH_NAME = "pass-through topology, exactly once";
  private static final String SCORING_NAME = "scoring";

  private static final String BARE = "bench.bare";
  private static final String THROUGH = "bench.through";
  private static final int PARTITIONS = 6;
  private static final Duration A_WHILE = Duration.ofMillis(200);

  private final BrokerProcess broker;
  private final Payload payload;
  private final int warmUp;
  private final Path folder;

  private Ways(BrokerProcess broker, Payload payload, int warmUp, Path folder) {
    this.broker = broker;
    this.payload = payload;
    this.warmUp = warmUp;
    this.folder = folder;
  }

  /**
   * All on a broker of their own; each of them after the others.
   *
   * @param warmUp how many assessments each way takes in before its meter runs
   * @param wanted by the name of a way
   * @param tell of each way as soon as it is over
   */
  static void measure(
      Payload payload, int warmUp, Path folder, Predicate<String> wanted, Consumer<Measured> tell)
      throws Exception {
    try (var broker = BrokerProcess.start(folder.resolve("broker"))) {
      broker.makeTopics(
          List.of(
              INPUT,
              Topic.ENCOUNTERS.topic(),
              Topic.CARE_PLANS.topic(),
              Topic.SNAPSHOTS.topic(),
              Topic.REJECTED.topic(),
              BARE,
              THROUGH),
          PARTITIONS);
      var ways = new Ways(broker, payload, warmUp, folder);
      ways.admit();
      payload.sendAssessments(broker.access());
      if (wanted.test(BARE_NAME)) {
        tell.accept(ways.bare());
      }
      if (wanted.test(THROUGH_NAME)) {
        tell.accept(ways.through());
      }
      if (wanted.test(SCORING_NAME)) {
        tell.accept(ways.scoring());
      }
      if (wanted.test(PolledView.NAME)) {
        tell.accept(PolledView.measure(payload, broker, INPUT, folder.resolve("postgres")));
      }
    }
  }

  /** Scoring learns who the patients are, and is not timed while it does. */
  private void admit() throws Exception {
    payload.sendEncounters(broker.access());
    var streams = scoringStreams();
    streams.start();
    await(BenchConfig.APPLICATION, Topic.ENCOUNTERS.topic(), payload.encounters());
    streams.stop();
  }

  private Measured bare() throws ExecutionException, InterruptedException {
    try (var consumer = broker.reader(broker.partitions(INPUT));
        var out = new Outbox(broker.access())) {
      long warm = copy(consumer, out, warmUp);
      long before = broker.bytes();
      var meter = meter();
      long copied = copy(consumer, out, payload.assessments() - warm);
      return meter.read(BARE_NAME, payload.encounters(), copied, bytes(before));
    }
  }

  private static long copy(KafkaConsumer<String, byte[]> consumer, Outbox out, long atLeast) {
    long copied = 0;
    while (copied < atLeast) {
      for (var received : consumer.poll(A_WHILE)) {
        out.send(BARE, received.key(), received.value());
        copied++;
      }
    }
    out.flush();
    return copied;
  }

  private Measured through() throws Exception {
    var builder = new StreamsBuilder();
    builder.stream(INPUT, Consumed.with(Serdes.String(), Serdes.ByteArray()))
        .to(THROUGH, Produced.with(Serdes.String(), Serdes.ByteArray()));
    long before = broker.bytes();
    try (var streams = new KafkaStreams(builder.build(), throughSettings())) {
      streams.start();
      return timed("bench-through", THROUGH_NAME, before, 0);
    }
  }

  /** What scoring's topology is run with. */
  private Properties throughSettings() {
    var settings = new Properties();
    settings.putAll(broker.access().settings());
    settings.put(StreamsConfig.APPLICATION_ID_CONFIG, "bench-through");
    settings.put(StreamsConfig.STATE_DIR_CONFIG, folder.resolve("through").toString());
    settings.put(StreamsConfig.PROCESSING_GUARANTEE_CONFIG, StreamsConfig.EXACTLY_ONCE_V2);
    settings.put(StreamsConfig.COMMIT_INTERVAL_MS_CONFIG, 100);
    settings.put(StreamsConfig.NUM_STREAM_THREADS_CONFIG, 2);
    settings.put(StreamsConfig.consumerPrefix("auto.offset.reset"), "earliest");
    settings.put(StreamsConfig.producerPrefix("compression.type"), "lz4");
    settings.put(StreamsConfig.producerPrefix("batch.size"), 256 << 10);
    return settings;
  }

  private Measured scoring() throws Exception {
    long before = broker.bytes();
    long stored = size(folder.resolve("scoring"));
    var streams = scoringStreams();
    streams.start();
    try {
      return timed(BenchConfig.APPLICATION, SCORING_NAME, before, stored);
    } finally {
      streams.stop();
    }
  }

  private ScoringStreams scoringStreams() {
    var catalogue = Catalogue.shipped();
    return new ScoringStreams(
        broker.access(),
        new BenchConfig(folder),
        new EditionsInForce(catalogue, ScoreBooks.shipped(catalogue), PolicyFile.shipped()),
        catalogue,
        new SimpleMeterRegistry());
  }

  /** From the commit after warming up on, so that starting and compiling are not counted. */
  private Measured timed(String group, String way, long brokerBytes, long storeBytes)
      throws Exception {
    long begun = await(group, INPUT, Math.max(1, warmUp));
    var meter = meter();
    await(group, INPUT, payload.assessments());
    var measured = meter.read(way, payload.encounters(), payload.assessments() - begun, 0);
    double share = (double) measured.assessments() / payload.assessments();
    long bytes = bytes(brokerBytes) + size(folder.resolve("scoring")) - storeBytes;
    return new Measured(
        way,
        measured.encounters(),
        measured.assessments(),
        measured.seconds(),
        measured.clientSeconds(),
        measured.serverSeconds(),
        (long) (bytes * share));
  }

  private long await(String group, String topic, long records) throws Exception {
    long end = System.nanoTime() + Duration.ofMinutes(20).toNanos();
    while (System.nanoTime() < end) {
      long committed = broker.committed(group, topic);
      if (committed >= records) {
        return committed;
      }
      Thread.sleep(100);
    }
    throw new IllegalStateException(group + " does not get there");
  }

  private Meter meter() {
    return new Meter(() -> broker.cpu().toMillis() / 1e3);
  }

  private long bytes(long before) throws ExecutionException, InterruptedException {
    return broker.bytes() - before;
  }

  private static long size(Path folder) throws IOException {
    if (!Files.exists(folder)) {
      return 0;
    }
    try (var files = Files.walk(folder)) {
      return files.map(Path::toFile).filter(file -> file.isFile()).mapToLong(f -> f.length()).sum();
    }
  }
}
