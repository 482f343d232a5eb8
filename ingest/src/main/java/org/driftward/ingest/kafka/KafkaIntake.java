package org.driftward.ingest.kafka;

import io.micrometer.core.instrument.Timer;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CompletionStage;
import java.util.concurrent.locks.Lock;
import java.util.concurrent.locks.ReentrantLock;
import java.util.function.Supplier;
import java.util.stream.Stream;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.ground.kafka.KafkaAccess;
import org.driftward.ingest.config.IngestConfig;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Accepted;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.RolePart;
import org.driftward.ingest.contract.Topic;
import org.driftward.ingest.core.Bookkeeping;
import org.driftward.ingest.core.IntakeRules;

/**
 * Intake on Kafka. Thread-safe once started.
 *
 * <p>When Kafka goes away in the middle of a request, some of its records may be kept and the
 * sender is told to repeat. That is safe: readers keep one of equal revisions, and an encounter
 * that is put as it already is does not change.
 */
@Singleton
public class KafkaIntake implements AssessmentIntake, RolePart {

  private static final JsonFormat<Encounter> ENCOUNTER = JsonFormat.of(Encounter.class);
  private static final JsonFormat<Assessment[]> ASSESSMENTS = JsonFormat.of(Assessment[].class);
  private static final String JSON = "application/json";

  private final KafkaAccess access;
  private final IngestConfig config;
  private final KafkaEncounterDirectory directory;
  private final IntakeMetrics metrics;
  private final Clock clock;
  private final Keeping keeping;
  private final Lock[] changeLocks =
      Stream.generate(ReentrantLock::new).limit(64).toArray(Lock[]::new);
  private volatile Optional<RecordSender> sender = Optional.empty();

  public KafkaIntake(
      KafkaAccess access,
      IngestConfig config,
      IntakeRules rules,
      KafkaEncounterDirectory directory,
      IntakeMetrics metrics,
      Clock clock) {
    this.access = access;
    this.config = config;
    this.directory = directory;
    this.metrics = metrics;
    this.clock = clock;
    this.keeping = new Keeping(rules, directory, metrics, clock, this::send);
  }

  @Override
  public CompletionStage<Outcome> accept(Received received, List<Assessment> assessments) {
    return answered(() -> keeping.accept(received, assessments));
  }

  @Override
  public CompletionStage<Outcome> refuse(Received received, List<Fault> faults) {
    return answered(() -> keeping.refuse(received, faults));
  }

  @Override
  public CompletionStage<Outcome> change(Received received, EncounterChange change) {
    return change(received, change, keeping);
  }

  /**
   * {@link #change(Received, EncounterChange)}, what is refused kept by another. The change itself
   * is made at once; made again, it changes nothing.
   */
  public CompletionStage<Outcome> change(
      Received received, EncounterChange change, Keeping refusals) {
    var lock = changeLocks[Math.floorMod(change.encounter().hashCode(), changeLocks.length)];
    lock.lock();
    try {
      return answered(() -> changeInTurn(received, change, refusals));
    } finally {
      lock.unlock();
    }
  }

  /** Not to answer is one outcome, however it came about. */
  private CompletionStage<Outcome> answered(Supplier<CompletionStage<Outcome>> work) {
    try {
      return work.get();
    } catch (UnavailableException e) {
      metrics.unavailable();
      return CompletableFuture.failedFuture(e);
    }
  }

  private CompletionStage<Outcome> changeInTurn(
      Received received, EncounterChange change, Keeping refusals) {
    var known = directory.findNewest(change.encounter());
    var faults = Bookkeeping.check(known, change);
    if (!faults.isEmpty()) {
      return refusals.refuse(received, faults);
    }
    var next = Bookkeeping.apply(known, change);
    Outcome accepted = new Accepted(List.of(next.id()));
    if (known.isPresent() && known.get().equals(next)) {
      return CompletableFuture.completedFuture(accepted);
    }
    try {
      send(List.of(
              RecordSender.letter(
                  Topic.ENCOUNTERS,
                  next.id(),
                  ENCOUNTER.write(next),
                  clock.instant(),
                  received.origin())))
          .join();
    } catch (CompletionException e) {
      return CompletableFuture.failedFuture(e.getCause());
    }
    directory.take(next);
    metrics.moved();
    return CompletableFuture.completedFuture(accepted);
  }

  @Override
  public CompletionStage<Outcome> accept(String origin, List<Assessment> assessments) {
    var bytes = ASSESSMENTS.write(assessments.toArray(Assessment[]::new));
    var source = assessments.isEmpty() ? Source.BEDSIDE : assessments.get(0).source();
    return accept(new Received(origin, source, "assessments", JSON, bytes), assessments);
  }

  @Override
  public CompletionStage<Outcome> put(String origin, Encounter encounter) {
    var received =
        new Received(origin, Source.BEDSIDE, "encounters", JSON, ENCOUNTER.write(encounter));
    return change(received, EncounterChange.Put.of(encounter));
  }

  private CompletableFuture<Void> send(List<ProducerRecord<String, byte[]>> records) {
    var timing = Timer.start();
    var open = sender();
    var sent = records.stream().map(open::send).toArray(CompletableFuture<?>[]::new);
    return CompletableFuture.allOf(sent)
        .whenComplete(
            (done, failure) -> {
              timing.stop(metrics.acknowledgement());
              if (failure != null) {
                metrics.unavailable();
              }
            });
  }

  private RecordSender sender() {
    return sender.orElseThrow(
        () ->
            new UnavailableException(
                "intake is not running", new IllegalStateException("not started")));
  }

  @Override
  public Role role() {
    return Role.INGEST;
  }

  @Override
  public String name() {
    return "intake";
  }

  @Override
  public void start() {
    sender = Optional.of(new RecordSender(access, config.kafka()));
  }

  @Override
  public void stop() {
    sender.ifPresent(RecordSender::close);
    sender = Optional.empty();
  }

  @Override
  public Condition condition() {
    return sender.isPresent() ? Condition.ok() : Condition.ill("not started");
  }
}
