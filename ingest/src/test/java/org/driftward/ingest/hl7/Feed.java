package org.driftward.ingest.hl7;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.nio.charset.StandardCharsets;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.kafka.IntakeMetrics;
import org.driftward.ingest.kafka.KafkaEncounterDirectory;
import org.driftward.ingest.kafka.KafkaIntake;
import org.driftward.ingest.mapping.ShippedCodes;
import org.driftward.testing.Broker;

/** The door for HL7 v2 with the real intake behind it, on a real broker, at noon of one day. */
public final class Feed implements AutoCloseable {

  public static final Instant NOW = Instant.parse("2026-01-05T12:00:00Z");

  public final SimpleMeterRegistry meters = new SimpleMeterRegistry();
  public final IngestConfig config;
  public final KafkaEncounterDirectory directory;
  public final Hl7Door door;
  public final IntakeMetrics metrics = new IntakeMetrics(meters);
  private final KafkaIntake intake;

  public Feed(KafkaAccess access, Map<String, String> settings) {
    this.config = config(settings);
    this.directory = new KafkaEncounterDirectory(access, config);
    var clock = Clock.fixed(NOW, ZoneOffset.UTC);
    var catalogue = Catalogue.shipped();
    var limits = new IntakeLimits(Duration.ofMinutes(5), Duration.ofHours(24), 1000);
    this.intake =
        new KafkaIntake(
            access, config, new IntakeRules(catalogue, limits), directory, metrics, clock);
    this.door =
        new Hl7Door(intake, directory, directory, catalogue, ShippedCodes.MAP, config, clock);
    directory.start();
    intake.start();
  }

  private static IngestConfig config(Map<String, String> settings) {
    var all =
        new HashMap<>(
            Map.of(
                "driftward.ingest.kafka.max-block", "PT20S",
                "driftward.ingest.kafka.delivery-timeout", "PT20S",
                "driftward.ingest.kafka.catch-up", "PT20S",
                "driftward.ingest.mllp.port", "0"));
    all.putAll(settings);
    return new SmallRyeConfigBuilder()
        .addDiscoveredConverters()
        .withMapping(IngestConfig.class)
        .withDefaultValues(all)
        .build()
        .getConfigMapping(IngestConfig.class);
  }

  /** The answer as text. */
  public String take(String message) {
    return new String(door.take(message.getBytes(StandardCharsets.UTF_8)), StandardCharsets.UTF_8);
  }

  /** Admits patient {@code P-<stay>} to ward LINDEN, room 12, bed A, at 08:00 UTC. */
  public void admit(String stay) {
    var answer =
        take(
            Text.message(
                Text.msh("ADT^A01^ADT_A01", "A-" + stay),
                Text.evn("20260105080500+0000"),
                Text.pid("P-" + stay),
                Text.pv1("LINDEN^12^A", stay, "20260105080000+0000", "")));
    if (!answer.contains("MSA|AA|")) {
      throw new AssertionError(answer);
    }
  }

  public static List<Assessment> assessments(Broker broker, String stay) {
    var format = JsonFormat.of(Assessment.class);
    return broker.read(Topic.ASSESSMENTS).stream()
        .filter(one -> one.key().equals(stay))
        .map(one -> format.read(one.value()))
        .toList();
  }

  public static List<Rejection> rejections(Broker broker) {
    var format = JsonFormat.of(Rejection.class);
    return broker.read(Topic.REJECTED).stream().map(one -> format.read(one.value())).toList();
  }

  @Override
  public void close() {
    intake.stop();
    directory.stop();
  }
}
