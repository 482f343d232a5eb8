package org.driftward.ingest.files;

import jakarta.inject.Singleton;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.CompletableFuture;
import java.util.concurrent.CompletionException;
import java.util.concurrent.CompletionStage;
import java.util.function.Function;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Refused;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Bytes;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.AssessmentReader.Defaults;
import org.driftward.ingest.core.Gate.Bearer;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.core.Reading;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.files.RowText.BrokenRowException;

/**
 * Brings rows in through the one door, each for itself: a broken one does not touch its neighbours.
 * Blocks until Kafka has acknowledged all of them. Thread-safe.
 */
@Singleton
final class FileIntake {

  private final AssessmentIntake intake;
  private final EncounterDirectory directory;
  private final IntakeRules rules;

  FileIntake(AssessmentIntake intake, EncounterDirectory directory, IntakeRules rules) {
    this.intake = intake;
    this.directory = directory;
    this.rules = rules;
  }

  FileIntake over(AssessmentIntake another, EncounterDirectory house) {
    return new FileIntake(another, house, rules);
  }

  /** A row as it was cut out of the file. */
  record Row(long offset, long line, Bytes bytes, boolean whole) {}

  /**
   * What the rows of one call have in common.
   *
   * @param asReceived under which name and heading a row that is refused is kept
   */
  record Lot(RowReader reader, Bearer bearer, Instant now, Function<Row, Received> asReceived) {}

  /** What became of a row; no faults if it was kept. */
  record Verdict(Row row, List<Fault> faults) {}

  /**
   * @throws UnavailableException if Kafka did not acknowledge every row; then bring all of them in
   *     again, which is safe
   */
  List<Verdict> bring(List<Row> rows, Lot lot) {
    var known = directory.forOneRequest();
    var pending = new ArrayList<CompletableFuture<Verdict>>(rows.size());
    for (var row : rows) {
      var verdict = bring(row, lot, known);
      if (verdict.isCompletedExceptionally()) {
        // Kafka is away. To go on would mean to wait for it once for every row.
        await(verdict);
      }
      pending.add(verdict);
    }
    return pending.stream().map(FileIntake::await).toList();
  }

  private CompletableFuture<Verdict> bring(
      Row row, Lot lot, Function<String, Optional<Encounter>> known) {
    var received = lot.asReceived().apply(row);
    if (!row.whole()) {
      return refused(row, received, RowReader.faults(new BrokenRowException("the row has no end")));
    }
    RowReader.Read read;
    try {
      read =
          lot.reader().read(row.bytes().array(), new Defaults(lot.now(), lot.bearer().account()));
    } catch (BrokenRowException e) {
      return refused(row, received, RowReader.faults(e));
    }
    var faults = check(read, lot, known);
    return faults.isEmpty()
        ? verdict(row, intake.accept(received, read.reading().assessments()))
        : refused(row, received, faults);
  }

  private List<Fault> check(
      RowReader.Read read, Lot lot, Function<String, Optional<Encounter>> known) {
    if (!seen(read.reading(), lot, known)) {
      var fault = new Fault("/encounter", Rule.OTHER_WARD.word(), "not a ward of this account");
      return List.of(fault);
    }
    return rules.check(read.reading(), known, lot.now()).stream().map(read.atItsColumn()).toList();
  }

  private static boolean seen(
      Reading reading, Lot lot, Function<String, Optional<Encounter>> known) {
    return reading.drafts().stream()
        .flatMap(draft -> Optional.ofNullable(draft.encounter()).stream())
        .flatMap(encounter -> known.apply(encounter).stream())
        .allMatch(encounter -> lot.bearer().sight().sees(encounter.ward()));
  }

  private CompletableFuture<Verdict> refused(Row row, Received received, List<Fault> faults) {
    return verdict(row, intake.refuse(received, faults));
  }

  private static CompletableFuture<Verdict> verdict(Row row, CompletionStage<Outcome> outcome) {
    return outcome
        .thenApply(
            known -> new Verdict(row, known instanceof Refused no ? no.faults() : List.<Fault>of()))
        .toCompletableFuture();
  }

  private static Verdict await(CompletableFuture<Verdict> verdict) {
    try {
      return verdict.join();
    } catch (CompletionException e) {
      if (e.getCause() instanceof UnavailableException unavailable) {
        throw unavailable;
      }
      throw e;
    }
  }
}
