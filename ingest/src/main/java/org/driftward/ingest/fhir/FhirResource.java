package org.driftward.ingest.fhir;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.HttpHeaders;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.concurrent.CompletionException;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment.Source;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.driftward.ingest.contract.Fault;
import org.driftward.ingest.contract.Received;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.core.Rule;
import org.driftward.ingest.fhir.FhirFormat.NotThisResourceException;
import org.driftward.ingest.fhir.FhirIntake.Result;
import org.driftward.ingest.web.BodyLimit;
import org.driftward.ingest.web.Sender;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.hl7.fhir.r4.model.Bundle;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.OperationOutcome;
import org.hl7.fhir.r4.model.OperationOutcome.IssueType;
import org.hl7.fhir.r4.model.Resource;

/** {@code POST /fhir} takes R4 Bundles, {@code POST /fhir/Observation} single Observations. */
@Path("/fhir")
@ServedBy(Role.INGEST)
@RolesAllowed({AccountRole.INTEGRATION, AccountRole.ADMIN})
@Consumes({FhirFormat.JSON, FhirFormat.XML, MediaType.APPLICATION_JSON, MediaType.APPLICATION_XML})
@Produces({FhirFormat.JSON, FhirFormat.XML, MediaType.APPLICATION_JSON})
@Tag(name = "fhir")
public class FhirResource {

  private final FhirFormat format;
  private final FhirIntake intake;
  private final BodyLimit bodyLimit;
  private final Sender sender;

  FhirResource(FhirFormat format, FhirIntake intake, BodyLimit bodyLimit, Sender sender) {
    this.format = format;
    this.intake = intake;
    this.bodyLimit = bodyLimit;
    this.sender = sender;
  }

  /** Reads one resource type and brings it in. */
  private interface Taker<T extends Resource> {
    Result take(T resource, Received received);
  }

  @POST
  @Blocking
  @Operation(
      summary = "Send a FHIR R4 Bundle",
      description =
          "Patient, Encounter, Location and Observation entries, all or nothing. Observations whose"
              + " code is not mapped are reported as warnings and kept for replay.")
  @APIResponse(responseCode = "200", description = "Kept; an OperationOutcome says what")
  @APIResponse(responseCode = "400", description = "Refused; one issue for each fault")
  @APIResponse(responseCode = "503", description = "Not promised; repeat after Retry-After")
  public Response bundle(@HeaderParam(HttpHeaders.CONTENT_TYPE) String type, byte[] body) {
    return answer(
        Bundle.class,
        "POST /fhir",
        type,
        body,
        Response.Status.OK,
        (bundle, received) -> intake.take(bundle, received, sender.account(), sender::sees));
  }

  @POST
  @Path("/Observation")
  @Blocking
  @Operation(summary = "Send a FHIR R4 Observation")
  @APIResponse(responseCode = "201", description = "Kept; an OperationOutcome says what")
  @APIResponse(responseCode = "400", description = "Refused; one issue for each fault")
  @APIResponse(responseCode = "503", description = "Not promised; repeat after Retry-After")
  public Response observation(@HeaderParam(HttpHeaders.CONTENT_TYPE) String type, byte[] body) {
    return answer(
        Observation.class,
        "POST /fhir/Observation",
        type,
        body,
        Response.Status.CREATED,
        (observation, received) ->
            intake.take(observation, received, sender.account(), sender::sees));
  }

  private <T extends Resource> Response answer(
      Class<T> resource,
      String target,
      String type,
      byte[] body,
      Response.Status kept,
      Taker<T> taker) {
    bodyLimit.check(body);
    var received = sender.received(Source.FHIR, target, type, body);
    try {
      return outcome(taker.take(format.read(resource, type, body), received), kept, type);
    } catch (NotThisResourceException e) {
      var fault = new Fault("", Rule.MALFORMED_RESOURCE.word(), String.valueOf(e.getMessage()));
      intake.refuse(received, fault);
      return respond(400, Outcomes.refused(java.util.List.of(fault)), type);
    } catch (CompletionException e) {
      // The intake's own exception has a mapper that knows when to come again.
      if (e.getCause() instanceof UnavailableException unavailable) {
        throw unavailable;
      }
      throw e;
    }
  }

  private Response outcome(Result result, Response.Status kept, String type) {
    if (result instanceof Result.Kept done) {
      return respond(
          kept.getStatusCode(),
          Outcomes.accepted(done.assessments(), done.changes(), done.unmapped()),
          type);
    }
    if (result instanceof Result.NotKept refused) {
      return respond(400, Outcomes.refused(refused.faults()), type);
    }
    return respond(
        403,
        Outcomes.single(IssueType.FORBIDDEN, "This account does not see the encounter's ward"),
        type);
  }

  private Response respond(int status, OperationOutcome outcome, String type) {
    return Response.status(status)
        .type(FhirFormat.isXml(type) ? FhirFormat.XML : FhirFormat.JSON)
        .entity(format.write(outcome, type))
        .build();
  }
}
