package org.driftward.scoring.stream;

import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.concurrent.ExecutionException;
import org.apache.kafka.clients.admin.Admin;
import org.apache.kafka.common.KafkaException;
import org.apache.kafka.streams.KafkaStreams;
import org.apache.kafka.streams.errors.StreamsUncaughtExceptionHandler.StreamThreadExceptionResponse;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ground.part.Supervisor;
import org.driftward.ground.part.Worker;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.scoring.config.ScoringConfig;
import org.driftward.scoring.edition.EditionsInForce;
import org.driftward.scoring.stream.state.Memory;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * Runs the topology. Waits for Kafka and its topics in a thread of its own; a processing thread
 * that fails is replaced, and its transaction begins again.
 */
@Singleton
public class ScoringStreams implements RolePart {

  private static final Logger LOG = Logger.getLogger(ScoringStreams.class);
  private static final Duration LAST_WORDS = Duration.ofSeconds(20);
  private static final Duration LONG = Duration.ofHours(1);

  private final KafkaAccess access;
  private final ScoringConfig.Streams config;
  private final ScoringParts parts;
  private final StreamMeters meters;
  private final EditionTopic editions;
  private final Failures failures = new Failures();
  private final Worker starter;
  private volatile @Nullable KafkaStreams streams;
  private volatile String waitingFor = "not started";

  public ScoringStreams(
      KafkaAccess access,
      ScoringConfig config,
      EditionsInForce editions,
      Catalogue catalogue,
      MeterRegistry registry) {
    this.access = access;
    this.config = config.streams();
    this.parts =
        new ScoringParts(
            editions::timeline,
            catalogue,
            new ScoringMetrics(registry),
            new Memory(
                config.streams().rememberedEncounters(), config.streams().packedEncounters()));
    this.meters = new StreamMeters(registry);
    this.editions = new EditionTopic(access, editions);
    this.starter = new Worker("scoring-starter", this::startWhenReady);
  }

  @Override
  public Role role() {
    return Role.SCORING;
  }

  @Override
  public String name() {
    return "scoring-streams";
  }

  @Override
  public void start() {
    waitingFor = "waiting for Kafka";
    starter.start();
  }

  @Override
  public void stop() {
    starter.stop();
    var running = streams;
    streams = null;
    waitingFor = "stopped";
    if (running != null) {
      meters.unbind();
      running.close(LAST_WORDS);
    }
    try {
      editions.stop();
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
  }

  @Override
  public Condition condition() {
    var running = streams;
    var starting = starter.condition();
    if (running == null) {
      return starting.well() ? Condition.ill(waitingFor) : starting;
    }
    if (editions.deaf()) {
      return Condition.ill("new editions of the policy are not heard of; restart");
    }
    if (failures.recent()) {
      return Condition.ill("a processing thread failed and was replaced");
    }
    return switch (running.state()) {
      case RUNNING -> Condition.ok();
      case CREATED, REBALANCING -> Condition.ill("partitions are being shared out");
      case PENDING_ERROR, ERROR -> Condition.ill("all processing threads have failed");
      case PENDING_SHUTDOWN, NOT_RUNNING -> Condition.ill("stopped");
    };
  }

  /** Once it runs, processing threads are replaced one by one; see {@link #replace}. */
  private Duration startWhenReady() throws InterruptedException {
    if (streams != null) {
      return LONG;
    }
    if (!topicsReady()) {
      return config.restartAfter();
    }
    editions.stop();
    editions.follow();
    run();
    return LONG;
  }

  private boolean topicsReady() throws InterruptedException {
    try (var admin = Admin.create(StreamSettings.admin(access))) {
      waitingFor = "waiting for the topics";
      return OwnTopics.ready(admin, config.replication());
    } catch (ExecutionException | KafkaException e) {
      waitingFor = "waiting for Kafka";
      LOG.debug("Kafka does not answer yet", e);
      return false;
    }
  }

  private void run() {
    var topology = ScoringTopology.of(parts);
    var created = new KafkaStreams(topology, StreamSettings.of(access, config));
    created.setUncaughtExceptionHandler(this::replace);
    meters.bind(created);
    created.start();
    streams = created;
  }

  private StreamThreadExceptionResponse replace(Throwable failure) {
    failures.another();
    Supervisor.OF_THE_PROCESS.failed(name(), failure);
    LOG.errorf(
        "A processing thread failed and is replaced: failure=%s cause=%s",
        failure.getClass().getSimpleName(), rootOf(failure).getClass().getSimpleName());
    LOG.debug("Failure of a processing thread", failure);
    try {
      Thread.sleep(config.restartAfter().toMillis());
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
    }
    return StreamThreadExceptionResponse.REPLACE_THREAD;
  }

  private static Throwable rootOf(Throwable failure) {
    var root = failure;
    while (root.getCause() != null) {
      root = root.getCause();
    }
    return root;
  }
}
