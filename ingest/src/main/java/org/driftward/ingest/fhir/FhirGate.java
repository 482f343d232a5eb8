package org.driftward.ingest.fhir;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.concurrent.CompletionException;
import org.driftward.ingest.contract.AssessmentIntake;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.core.Gate;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.fhir.FhirFormat.NotThisResourceException;
import org.driftward.ingest.fhir.FhirIntake.Result;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;

/** FHIR resources that came in before. */
@Singleton
public class FhirGate implements Gate {

  private static final String BUNDLE = "POST /fhir";
  private static final String OBSERVATION = "POST /fhir/Observation";

  /** A Bundle or an Observation, as its own first line says. */
  public static final String EITHER = "FHIR";

  private static final Set<String> TARGETS = Set.of(BUNDLE, OBSERVATION, EITHER);

  private final FhirFormat format;
  private final FhirIntake intake;

  FhirGate(FhirFormat format, FhirIntake intake) {
    this.format = format;
    this.intake = intake;
  }

  @Override
  public Gate over(AssessmentIntake another, EncounterDirectory house) {
    return new FhirGate(format, intake.over(another, house));
  }

  @Override
  public boolean serves(String target) {
    return TARGETS.contains(target);
  }

  @Override
  public Passage pass(Received received, Bearer bearer) {
    try {
      return passage(take(received, bearer));
    } catch (NotThisResourceException e) {
      var faults =
          List.of(new Fault("", Rule.MALFORMED_RESOURCE.word(), String.valueOf(e.getMessage())));
      intake.refuse(received, faults);
      return new Passage(false, faults);
    } catch (CompletionException e) {
      if (e.getCause() instanceof UnavailableException unavailable) {
        throw unavailable;
      }
      throw e;
    }
  }

  /** Without the condition it came with, if any: an identifier makes a replay one and the same. */
  private Result take(Received received, Bearer bearer) {
    var type = received.contentType();
    var sight = bearer.sight();
    var wanted =
        Map.of(BUNDLE, Bundle.class, OBSERVATION, Observation.class).get(received.target());
    var resource =
        wanted == null
            ? format.readEither(type, received.bytes())
            : format.read(wanted, type, received.bytes());
    return resource instanceof Bundle bundle
        ? intake.take(bundle, received, bearer.account(), sight::sees)
        : intake.take((Observation) resource, null, received, bearer.account(), sight::sees);
  }

  private static Passage passage(Result result) {
    if (result instanceof Result.Kept kept) {
      return new Passage(true, kept.unmapped());
    }
    if (result instanceof Result.NotKept refused) {
      return new Passage(false, refused.faults());
    }
    if (result instanceof Result.Each batch) {
      return new Passage(
          batch.each().stream().anyMatch(entry -> !entry.refused()),
          batch.each().stream().flatMap(entry -> entry.faults().stream()).toList());
    }
    return Passage.refused(Rule.OTHER_WARD, "This account does not see the encounter's ward");
  }
}
