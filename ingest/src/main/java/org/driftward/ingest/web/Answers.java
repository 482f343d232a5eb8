package org.driftward.ingest.web;

import jakarta.ws.rs.core.Response;
import java.util.concurrent.CompletionStage;
import org.driftward.ingest.contract.AssessmentIntake.Outcome;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Accepted;
import org.driftward.ingest.contract.AssessmentIntake.Outcome.Refused;

/** An outcome as an HTTP answer. */
final class Answers {

  private Answers() {}

  /** The stage fails as the outcome's does; {@link ProblemMappers} answers that. */
  static CompletionStage<Response> of(CompletionStage<Outcome> outcome, Response.Status accepted) {
    return outcome.thenApply(
        known ->
            known instanceof Accepted kept
                ? Response.status(accepted).entity(new AcceptedIds(kept.ids())).build()
                : Problems.refused(((Refused) known).faults()));
  }
}
