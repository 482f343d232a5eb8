package org.driftward.ingest.kafka;

import jakarta.inject.Singleton;
import java.time.Duration;
import java.util.HashMap;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.TimeoutException;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Function;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.core.PatientEncounters;

/** The encounters topic, read from its beginning and followed, in memory. Thread-safe. */
@Singleton
public class KafkaEncounterDirectory implements EncounterDirectory, PatientEncounters, RolePart {

  private final KafkaAccess access;
  private final Duration catchUp;
  private final EncounterTable table = new EncounterTable();
  private volatile Optional<TopicFollower> follower = Optional.empty();

  public KafkaEncounterDirectory(KafkaAccess access, IngestConfig config) {
    this.access = access;
    this.catchUp = config.kafka().catchUp();
  }

  @Override
  public Optional<Encounter> find(String encounter) {
    var known = table.find(encounter);
    return known.isPresent() ? known : findNewest(encounter);
  }

  @Override
  public Function<String, Optional<Encounter>> forOneRequest() {
    var answers = new HashMap<String, Optional<Encounter>>();
    var caughtUp = new AtomicBoolean();
    return encounter ->
        answers.computeIfAbsent(
            encounter,
            asked -> {
              var known = table.find(asked);
              return known.isPresent() || caughtUp.getAndSet(true) ? known : findNewest(asked);
            });
  }

  /** As far as this process has read, without waiting. */
  Optional<Encounter> known(String encounter) {
    return table.find(encounter);
  }

  /** As of the end of the topic now, even if an older state is known. */
  Optional<Encounter> findNewest(String encounter) {
    await(caughtUp());
    return table.find(encounter);
  }

  /**
   * Asks Kafka whether it is there.
   *
   * @throws UnavailableException if it does not answer within a bounded wait
   */
  public void confirm() {
    await(caughtUp());
  }

  /** As of the end of the topic now: a stay that is missed keeps a number that is given up. */
  @Override
  public List<Encounter> of(String patient) {
    await(caughtUp());
    return table.ofPatient(patient);
  }

  /** What this process has just sent and Kafka has acknowledged. */
  void take(Encounter encounter) {
    table.take(encounter);
  }

  private CompletableFuture<Void> caughtUp() {
    return follower
        .map(TopicFollower::caughtUp)
        .orElseGet(() -> CompletableFuture.failedFuture(new IllegalStateException("not started")));
  }

  private void await(CompletableFuture<Void> caughtUp) {
    try {
      caughtUp.get(catchUp.toMillis(), TimeUnit.MILLISECONDS);
    } catch (InterruptedException e) {
      Thread.currentThread().interrupt();
      throw unavailable(e);
    } catch (ExecutionException | TimeoutException e) {
      caughtUp.cancel(false);
      throw unavailable(e);
    }
  }

  private static UnavailableException unavailable(Exception cause) {
    return new UnavailableException("the encounters are not up to date", cause);
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return "encounter-directory";
  }

  @Override
  public void start() {
    var started = new TopicFollower(access, table);
    follower = Optional.of(started);
    started.start();
  }

  @Override
  public void stop() {
    follower.ifPresent(TopicFollower::stop);
    follower = Optional.empty();
  }

  @Override
  public Condition condition() {
    return follower.map(TopicFollower::condition).orElseGet(() -> Condition.ill("not started"));
  }
}
