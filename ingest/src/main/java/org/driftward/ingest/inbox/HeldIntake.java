package org.driftward.ingest.inbox;

import java.time.Clock;
import java.util.ArrayList;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionStage;
import java.util.function.Consumer;
import org.apache.kafka.clients.producer.ProducerRecord;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.kafka.KafkaIntake;
import org.driftward.ingest.kafka.Keeping;
import org.driftward.ingest.kafka.Tally;

/**
 * An intake whose outcome is a promise on condition: assessments and refusals are held back until
 * somebody takes them, to commit them together. Only changes of encounters are made at once,
 * because what follows is judged by them; made again after a crash, they change nothing. Used by
 * one thread.
 */
final class HeldIntake implements AssessmentIntake, Tally {

  private final KafkaIntake house;
  private final Keeping keeping;
  private final List<ProducerRecord<String, byte[]>> records = new ArrayList<>();
  private final List<Consumer<Tally>> counts = new ArrayList<>();

  HeldIntake(KafkaIntake house, IntakeRules rules, EncounterDirectory directory, Clock clock) {
    this.house = house;
    this.keeping = new Keeping(rules, directory, this, clock, this::hold);
  }

  /** Everything held since the last call. */
  Judged take() {
    var judged = new Judged(records, counts);
    drop();
    return judged;
  }

  /** Forgets what was held since the last call. */
  void drop() {
    records.clear();
    counts.clear();
  }

  private CompletionStage<Void> hold(List<ProducerRecord<String, byte[]>> some) {
    records.addAll(some);
    return CompletableFuture.completedFuture(null);
  }

  @Override
  public CompletionStage<Outcome> accept(Received received, List<Assessment> assessments) {
    return keeping.accept(received, assessments);
  }

  @Override
  public CompletionStage<Outcome> change(Received received, EncounterChange change) {
    return house.change(received, change, keeping);
  }

  @Override
  public CompletionStage<Outcome> refuse(Received received, List<Fault> faults) {
    return keeping.refuse(received, faults);
  }

  @Override
  public CompletionStage<Outcome> accept(String origin, List<Assessment> assessments) {
    return house.accept(origin, assessments);
  }

  @Override
  public CompletionStage<Outcome> put(String origin, Encounter encounter) {
    return house.put(origin, encounter);
  }

  @Override
  public void accepted(Source source) {
    counts.add(tally -> tally.accepted(source));
  }

  @Override
  public void refused(Received received) {
    counts.add(tally -> tally.refused(received));
  }
}
