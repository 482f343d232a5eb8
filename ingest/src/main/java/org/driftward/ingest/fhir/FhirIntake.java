package org.driftward.ingest.fhir;

import jakarta.inject.Inject;
import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.HashMap;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.function.Predicate;
import java.util.stream.Stream;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Refused;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.IntakeLimits;
import org.driftward.ingest.core.IntakeRules;
import org.driftward.ingest.core.PutRules;
import org.driftward.ingest.core.Reading;
import org.driftward.ingest.core.mapping.CodeMap;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.jspecify.annotations.Nullable;

/**
 * Brings a FHIR resource in through the one door: first the bed moves, then the assessments, all or
 * nothing; a batch entry by entry. Blocks until Kafka has acknowledged. Thread-safe.
 */
@Singleton
final class FhirIntake {

  /** What became of a resource. */
  sealed interface Result {
    /**
     * @param each in the order of the Bundle; one for a single Observation
     */
    record Kept(int assessments, int changes, List<Fault> unmapped, List<EntryAnswer> each)
        implements Result {}

    record NotKept(List<Fault> faults) implements Result {}

    /** It speaks about a ward that the sender does not see. */
    record OtherWard() implements Result {}

    /** A batch: each entry has its own answer. */
    record Each(List<EntryAnswer> each) implements Result {}
  }

  private final AssessmentIntake intake;
  private final EncounterDirectory directory;
  private final Codings codings;
  private final BundleReader reader;
  private final IntakeRules rules;
  private final PutRules putRules;
  private final Clock clock;

  @Inject
  FhirIntake(
      AssessmentIntake intake,
      EncounterDirectory directory,
      Catalogue catalogue,
      CodeMap codes,
      IntakeRules rules,
      IntakeLimits limits,
      Clock clock) {
    this(intake, directory, new Codings(catalogue, codes), rules, new PutRules(limits), clock);
  }

  private FhirIntake(
      AssessmentIntake intake,
      EncounterDirectory directory,
      Codings codings,
      IntakeRules rules,
      PutRules putRules,
      Clock clock) {
    this.intake = intake;
    this.directory = directory;
    this.codings = codings;
    this.reader = new BundleReader(codings, directory, clock);
    this.rules = rules;
    this.putRules = putRules;
    this.clock = clock;
  }

  FhirIntake over(AssessmentIntake another, EncounterDirectory house) {
    return new FhirIntake(another, house, codings, rules, putRules, clock);
  }

  Result take(Bundle bundle, Received received, String by, Predicate<String> sees) {
    var each = reader.readEach(bundle, new Reporter(by, received.origin()));
    return bundle.getType() == Bundle.BundleType.BATCH
        ? new BatchIntake(this, withUnmapped(received, each), sees).take(each)
        : keep(each, withUnmapped(received, each), sees);
  }

  Result take(
      Observation observation,
      @Nullable String ifNoneExist,
      Received received,
      String by,
      Predicate<String> sees) {
    var one = List.of(reader.read(observation, ifNoneExist, new Reporter(by, received.origin())));
    return keep(one, withUnmapped(received, one), sees);
  }

  private static Received withUnmapped(Received received, List<Converted> each) {
    return received.withUnmapped(each.stream().flatMap(one -> one.codes.stream()).toList());
  }

  /** What could not even be read. */
  void refuse(Received received, List<Fault> faults) {
    intake.refuse(received, faults).toCompletableFuture().join();
  }

  private Result keep(List<Converted> each, Received received, Predicate<String> sees) {
    var all = new Converted();
    each.forEach(all::addAll);
    if (!seen(all, sees)) {
      return new Result.OtherWard();
    }
    var faults = faults(all, house());
    if (!faults.isEmpty()) {
      refuse(received, faults);
      return new Result.NotKept(faults);
    }
    for (int i = 0; i < all.changes.size(); i++) {
      var refused = move(all, i, received);
      if (!refused.isEmpty()) {
        return new Result.NotKept(refused);
      }
    }
    var refused = send(all, received);
    if (!refused.isEmpty()) {
      return new Result.NotKept(refused);
    }
    if (!all.unmapped.isEmpty()) {
      refuse(received, all.unmapped);
    }
    return new Result.Kept(
        all.assessments.size(),
        all.changes.size(),
        List.copyOf(all.unmapped),
        each.stream().map(EntryAnswer::kept).toList());
  }

  HouseAfter house() {
    return new HouseAfter(directory, putRules, clock.instant());
  }

  /** Everything that speaks against keeping it, before anything is kept. Makes its moves there. */
  List<Fault> faults(Converted converted, HouseAfter house) {
    var moves =
        Stream.iterate(0, i -> i < converted.changes.size(), i -> i + 1)
            .flatMap(
                i ->
                    house.move(converted.changes.get(i)).stream()
                        .map(fault -> converted.ofChange(i, fault)))
            .toList();
    var assessments =
        rules.check(Reading.of(converted.assessments), house::find, clock.instant()).stream()
            .map(converted::ofAssessment);
    return Stream.concat(Stream.concat(converted.faults.stream(), moves.stream()), assessments)
        .toList();
  }

  /** Makes one bed move; its faults where the house has changed meanwhile. */
  List<Fault> move(Converted converted, int index, Received received) {
    var outcome =
        intake.change(received, converted.changes.get(index)).toCompletableFuture().join();
    return outcome instanceof Refused no
        ? no.faults().stream().map(fault -> converted.ofChange(index, fault)).toList()
        : List.of();
  }

  /** Sends the assessments; faults where the house has changed meanwhile. */
  List<Fault> send(Converted converted, Received received) {
    if (converted.assessments.isEmpty()) {
      return List.of();
    }
    Outcome outcome = intake.accept(received, converted.assessments).toCompletableFuture().join();
    return outcome instanceof Refused no
        ? no.faults().stream().map(converted::ofAssessment).toList()
        : List.of();
  }

  /** Where the patients are now, and for those who come in with this request, where to. */
  boolean seen(Converted converted, Predicate<String> sees) {
    var coming = new HashMap<String, String>();
    converted.changes.forEach(put -> coming.put(put.encounter(), put.ward()));
    return Stream.concat(
            coming.keySet().stream(), converted.assessments.stream().map(Assessment::encounter))
        .distinct()
        .map(
            encounter ->
                directory
                    .find(encounter)
                    .map(Encounter::ward)
                    .or(() -> Optional.ofNullable(coming.get(encounter)))
                    .orElse(null))
        .filter(Objects::nonNull)
        .allMatch(sees);
  }
}
