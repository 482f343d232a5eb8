package org.driftward.ingest.fhir;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.function.Predicate;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Refused;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterChange;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;

/**
 * Brings a FHIR resource in through the one door: first the bed moves, then the assessments, all or
 * nothing. Blocks until Kafka has acknowledged. Thread-safe.
 */
@Singleton
final class FhirIntake {

  /** What became of a resource. */
  sealed interface Result {
    record Kept(int assessments, int changes, List<Fault> unmapped) implements Result {}

    record NotKept(List<Fault> faults) implements Result {}

    /** It speaks about a ward that the sender does not see. */
    record OtherWard() implements Result {}
  }

  private final AssessmentIntake intake;
  private final EncounterDirectory directory;
  private final BundleReader reader;

  FhirIntake(
      AssessmentIntake intake, EncounterDirectory directory, Catalogue catalogue, Clock clock) {
    this.intake = intake;
    this.directory = directory;
    this.reader = new BundleReader(catalogue, directory, clock);
  }

  Result take(Bundle bundle, Received received, String by, Predicate<String> sees) {
    return keep(reader.read(bundle, by), received, sees);
  }

  Result take(Observation observation, Received received, String by, Predicate<String> sees) {
    return keep(reader.read(observation, by), received, sees);
  }

  /** What could not even be read. */
  void refuse(Received received, Fault fault) {
    intake.refuse(received, List.of(fault)).toCompletableFuture().join();
  }

  private Result keep(Converted converted, Received received, Predicate<String> sees) {
    if (!wards(converted).stream().allMatch(sees)) {
      return new Result.OtherWard();
    }
    if (!converted.faults.isEmpty()) {
      return refused(received, converted.faults);
    }
    for (var change : converted.changes) {
      if (intake.change(received, change).toCompletableFuture().join() instanceof Refused no) {
        return new Result.NotKept(no.faults());
      }
    }
    if (!converted.assessments.isEmpty()) {
      Outcome outcome = intake.accept(received, converted.assessments).toCompletableFuture().join();
      if (outcome instanceof Refused no) {
        return new Result.NotKept(no.faults().stream().map(converted::atItsResource).toList());
      }
    }
    if (!converted.unmapped.isEmpty()) {
      intake.refuse(received, converted.unmapped).toCompletableFuture().join();
    }
    return new Result.Kept(
        converted.assessments.size(), converted.changes.size(), List.copyOf(converted.unmapped));
  }

  private Result refused(Received received, List<Fault> faults) {
    intake.refuse(received, faults).toCompletableFuture().join();
    return new Result.NotKept(List.copyOf(faults));
  }

  /** Where the patients are now, and for those who come in with this request, where to. */
  private List<String> wards(Converted converted) {
    var coming = new HashMap<String, String>();
    for (var change : converted.changes) {
      if (change instanceof EncounterChange.Put put) {
        coming.put(put.encounter(), put.ward());
      }
    }
    var wards = new ArrayList<String>();
    var encounters = new ArrayList<String>(coming.keySet());
    converted.assessments.forEach(assessment -> encounters.add(assessment.encounter()));
    encounters.stream()
        .distinct()
        .forEach(
            encounter ->
                directory
                    .find(encounter)
                    .map(Encounter::ward)
                    .or(() -> java.util.Optional.ofNullable(coming.get(encounter)))
                    .ifPresent(wards::add));
    return wards;
  }
}
