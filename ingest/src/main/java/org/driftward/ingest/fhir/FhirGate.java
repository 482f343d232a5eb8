package org.driftward.ingest.fhir;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.Set;
import java.util.concurrent.CompletionException;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
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
  private static final Set<String> TARGETS = Set.of(BUNDLE, OBSERVATION);

  private final FhirFormat format;
  private final FhirIntake intake;

  FhirGate(FhirFormat format, FhirIntake intake) {
    this.format = format;
    this.intake = intake;
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
      var fault = new Fault("", Rule.MALFORMED_RESOURCE.word(), String.valueOf(e.getMessage()));
      intake.refuse(received, fault);
      return new Passage(false, List.of(fault));
    } catch (CompletionException e) {
      if (e.getCause() instanceof UnavailableException unavailable) {
        throw unavailable;
      }
      throw e;
    }
  }

  private Result take(Received received, Bearer bearer) throws NotThisResourceException {
    var type = received.contentType();
    var sight = bearer.sight();
    return received.target().equals(BUNDLE)
        ? intake.take(
            format.read(Bundle.class, type, received.bytes()),
            received,
            bearer.account(),
            sight::sees)
        : intake.take(
            format.read(Observation.class, type, received.bytes()),
            received,
            bearer.account(),
            sight::sees);
  }

  private static Passage passage(Result result) {
    if (result instanceof Result.Kept kept) {
      return new Passage(true, kept.unmapped());
    }
    if (result instanceof Result.NotKept refused) {
      return new Passage(false, refused.faults());
    }
    return Passage.refused(Rule.OTHER_WARD, "This account does not see the encounter's ward");
  }
}
