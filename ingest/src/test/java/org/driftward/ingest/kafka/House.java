package org.driftward.ingest.kafka;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.TimeUnit;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Finding;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.core.IntakeRules;

/** One process's intake and directory, running against a broker. */
public final class House implements AutoCloseable {

  public static final Instant NOW = Instant.parse("2026-01-05T12:00:00Z");
  private static final Instant ADMITTED = Instant.parse("2026-01-05T08:00:00Z");

  public final KafkaEncounterDirectory directory;
  public final KafkaIntake intake;
  public final IngestConfig config;
  public final IntakeRules rules;
  public final Clock clock = Clock.fixed(NOW, ZoneOffset.UTC);
  final SimpleMeterRegistry meters = new SimpleMeterRegistry();

  /** Waits long enough for a broker on a busy machine. */
  public House(KafkaAccess access) {
    this(access, Duration.ofSeconds(20));
  }

  /**
   * @param patience how long it waits for Kafka's answers
   */
  public House(KafkaAccess access, Duration patience) {
    this.config = config(patience);
    this.directory = new KafkaEncounterDirectory(access, config);
    var limits = new IntakeLimits(Duration.ofMinutes(5), Duration.ofHours(24), 1000);
    this.rules = new IntakeRules(Catalogue.shipped(), limits);
    this.intake =
        new KafkaIntake(access, config, rules, directory, new IntakeMetrics(meters), clock);
    directory.start();
    intake.start();
  }

  private static IngestConfig config(Duration patience) {
    return new SmallRyeConfigBuilder()
        .addDiscoveredConverters()
        .withMapping(IngestConfig.class)
        .withDefaultValues(
            Map.of(
                "driftward.ingest.kafka.max-block", patience.toString(),
                "driftward.ingest.kafka.delivery-timeout", patience.toString(),
                "driftward.ingest.kafka.catch-up", patience.toString()))
        .build()
        .getConfigMapping(IngestConfig.class);
  }

  public static Encounter encounter(String id, String ward, String bed) {
    return new Encounter(
        id,
        new Patient("P-" + id, "Sample, One", LocalDate.of(1950, 2, 3), Patient.Sex.FEMALE),
        List.of(new Stay(ward, bed, ADMITTED)),
        ADMITTED,
        null,
        null,
        1);
  }

  public static Assessment assessment(String id, String encounter, Finding... findings) {
    return new Assessment(
        id,
        1,
        Assessment.Status.FINAL,
        encounter,
        "P-" + encounter,
        NOW.minusSeconds(60),
        NOW,
        Assessment.Source.MONITOR,
        "device-1",
        null,
        List.of(findings));
  }

  public static Finding heartRate(int value) {
    return Finding.quantity("heart-rate", Integer.toString(value), "/min");
  }

  public static Outcome outcome(CompletionStage<Outcome> stage) throws Exception {
    return stage.toCompletableFuture().get(60, TimeUnit.SECONDS);
  }

  double counted(String meter, String source) {
    return meters.get(meter).tag("source", source).counter().count();
  }

  @Override
  public void close() {
    intake.stop();
    directory.stop();
  }
}
