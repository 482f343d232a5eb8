package org.driftward.ingest.fuzz;

import io.micrometer.core.instrument.simple.SimpleMeterRegistry;
import io.quarkus.security.runtime.QuarkusPrincipal;
import io.quarkus.security.runtime.QuarkusSecurityIdentity;
import io.smallrye.config.SmallRyeConfigBuilder;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.EncounterChange.Put;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.Stay;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.core.Bookkeeping;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.core.Reading;
import org.driftward.ingest.kafka.IntakeMetrics;
import org.driftward.ingest.web.BodyLimit;
import org.driftward.ingest.web.Sender;

/**
 * The door with the real rules and the real JSON of the topics, and lists in the place of Kafka,
 * which would only make the same tens of thousands of inputs slower. The door on Kafka has tests of
 * its own. One thread.
 */
public final class MemoryHouse implements AssessmentIntake, EncounterDirectory {

  public static final Instant NOW = Instant.parse("2031-03-02T06:00:00Z");
  public static final Instant ADMITTED = Instant.parse("2031-03-01T10:00:00Z");
  public static final Clock CLOCK = Clock.fixed(NOW, ZoneOffset.UTC);
  public static final IntakeLimits LIMITS =
      new IntakeLimits(Duration.ofMinutes(5), Duration.ofHours(24), 1000);
  public static final IntakeRules RULES = new IntakeRules(Catalogue.shipped(), LIMITS);

  private static final JsonFormat<Assessment> ASSESSMENT = JsonFormat.of(Assessment.class);
  private static final JsonFormat<Encounter> ENCOUNTER = JsonFormat.of(Encounter.class);
  private static final JsonFormat<Rejection> REJECTION = JsonFormat.of(Rejection.class);

  private final Map<String, Encounter> encounters = new HashMap<>();
  public final List<Assessment> kept = new ArrayList<>();
  public final List<Rejection> rejections = new ArrayList<>();
  private int rejected;

  /** With patient P-1 in bed A1 of ward heron, stay V-1. */
  public MemoryHouse() {
    take(encounter("V-1", "P-1", "heron", "A1"));
  }

  private static Encounter encounter(String id, String patient, String ward, String bed) {
    return new Encounter(
        id,
        new Patient(patient, "Sample, One", LocalDate.of(1950, 2, 3), Patient.Sex.FEMALE),
        List.of(new Stay(ward, bed, ADMITTED)),
        ADMITTED,
        null,
        null,
        1);
  }

  /** How many inputs were refused so far, those forgotten by {@link #forget} among them. */
  public int rejected() {
    return rejected;
  }

  /** Back to the first morning; only the count stays. */
  public void forget() {
    encounters.clear();
    kept.clear();
    rejections.clear();
    take(encounter("V-1", "P-1", "heron", "A1"));
  }

  @Override
  public Optional<Encounter> find(String encounter) {
    return Optional.ofNullable(encounters.get(encounter));
  }

  private void take(Encounter encounter) {
    encounters.put(encounter.id(), ENCOUNTER.read(ENCOUNTER.write(encounter)));
  }

  @Override
  public CompletionStage<Outcome> accept(Received received, List<Assessment> assessments) {
    var faults = RULES.check(Reading.of(assessments), this::find, NOW);
    if (!faults.isEmpty()) {
      return refuse(received, faults);
    }
    assessments.forEach(each -> kept.add(ASSESSMENT.read(ASSESSMENT.write(each))));
    return CompletableFuture.completedFuture(
        new Outcome.Accepted(assessments.stream().map(Assessment::id).toList()));
  }

  @Override
  public CompletionStage<Outcome> change(Received received, EncounterChange change) {
    var put = (Put) change;
    var faults = Bookkeeping.check(find(put.encounter()), put);
    if (!faults.isEmpty()) {
      return refuse(received, faults);
    }
    take(Bookkeeping.apply(find(put.encounter()), put));
    return CompletableFuture.completedFuture(new Outcome.Accepted(List.of(put.encounter())));
  }

  @Override
  public CompletionStage<Outcome> refuse(Received received, List<Fault> faults) {
    var rejection = Rejection.of("R-" + rejected, received, NOW, faults);
    rejections.add(REJECTION.read(REJECTION.write(rejection)));
    rejected++;
    return CompletableFuture.completedFuture(new Outcome.Refused(faults));
  }

  @Override
  public CompletionStage<Outcome> accept(String origin, List<Assessment> assessments) {
    throw new UnsupportedOperationException("senders inside the house are not tested here");
  }

  @Override
  public CompletionStage<Outcome> put(String origin, Encounter encounter) {
    throw new UnsupportedOperationException("senders inside the house are not tested here");
  }

  /** An interface that sees every ward. */
  public static Sender sender() {
    return new Sender(
        QuarkusSecurityIdentity.builder()
            .setPrincipal(new QuarkusPrincipal("feed"))
            .addAttribute(WardScope.ATTRIBUTE, WardScope.EVERY_WARD)
            .build());
  }

  public static BodyLimit bodyLimit() {
    var config =
        new SmallRyeConfigBuilder()
            .addDiscoveredConverters()
            .withMapping(IngestConfig.class)
            .build()
            .getConfigMapping(IngestConfig.class);
    return new BodyLimit(config, new IntakeMetrics(new SimpleMeterRegistry()));
  }
}
