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
import java.util.List;
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
import org.hl7.fhir.r4.model.Bundle.BundleType;
import org.hl7.fhir.r4.model.Observation;
import org.hl7.fhir.r4.model.Resource;
import org.jspecify.annotations.Nullable;

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
    Response take(T resource, Received received);
  }

  @POST
  @Blocking
  @Operation(
      summary = "Send a FHIR R4 Bundle",
      description =
          "Patient, Encounter, Location and Observation entries. A batch is answered entry by entry;"
              + " every other type is kept whole or not at all. Observations whose code is not"
              + " mapped are reported as warnings and kept for replay.")
  @APIResponse(
      responseCode = "200",
      description =
          "Kept. To a batch or transaction, a Bundle with an answer for each entry; else an"
              + " OperationOutcome says what")
  @APIResponse(responseCode = "400", description = "Refused; one issue for each fault")
  @APIResponse(responseCode = "503", description = "Not promised; repeat after Retry-After")
  public Response bundle(
      @HeaderParam(HttpHeaders.CONTENT_TYPE) @Nullable String type, byte[] body) {
    return answer(
        Bundle.class,
        "POST /fhir",
        type,
        body,
        (bundle, received) -> {
          var result = intake.take(bundle, received, sender.account(), sender::sees);
          if (result instanceof Result.Each batch) {
            return respond(200, Outcomes.bundle(BundleType.BATCHRESPONSE, batch.each()), type);
          }
          return result instanceof Result.Kept kept && bundle.getType() == BundleType.TRANSACTION
              ? respond(200, Outcomes.bundle(BundleType.TRANSACTIONRESPONSE, kept.each()), type)
              : outcome(result, 200, type);
        });
  }

  /**
   * @param ifNoneExist create it only if no Observation has this identifier: {@code
   *     identifier=system|value}
   */
  @POST
  @Path("/Observation")
  @Blocking
  @Operation(
      summary = "Send a FHIR R4 Observation",
      description = "With If-None-Exist, one that exists already stays as it is.")
  @APIResponse(responseCode = "201", description = "Kept; an OperationOutcome says what")
  @APIResponse(responseCode = "400", description = "Refused; one issue for each fault")
  @APIResponse(responseCode = "503", description = "Not promised; repeat after Retry-After")
  public Response observation(
      @HeaderParam(HttpHeaders.CONTENT_TYPE) @Nullable String type,
      @HeaderParam("If-None-Exist") @Nullable String ifNoneExist,
      byte[] body) {
    return answer(
        Observation.class,
        "POST /fhir/Observation",
        type,
        body,
        (observation, received) ->
            outcome(
                intake.take(observation, ifNoneExist, received, sender.account(), sender::sees),
                201,
                type));
  }

  private <T extends Resource> Response answer(
      Class<T> resource, String target, @Nullable String type, byte[] body, Taker<T> taker) {
    bodyLimit.check(body);
    var received =
        sender.received(Source.FHIR, target, type == null ? FhirFormat.JSON : type, body);
    try {
      return taker.take(format.read(resource, type, body), received);
    } catch (NotThisResourceException e) {
      var fault = new Fault("", Rule.MALFORMED_RESOURCE.word(), String.valueOf(e.getMessage()));
      intake.refuse(received, List.of(fault));
      return respond(400, Outcomes.refused(List.of(fault)), type);
    } catch (CompletionException e) {
      // The intake's own exception has a mapper that knows when to come again.
      if (e.getCause() instanceof UnavailableException unavailable) {
        throw unavailable;
      }
      throw e;
    }
  }

  private Response outcome(Result result, int kept, @Nullable String type) {
    if (result instanceof Result.Kept done) {
      var outcome = Outcomes.accepted(done.assessments(), done.changes(), done.unmapped());
      return respond(kept, outcome, type);
    }
    if (result instanceof Result.NotKept refused) {
      return respond(400, Outcomes.refused(refused.faults()), type);
    }
    return respond(403, Outcomes.otherWard(), type);
  }

  private Response respond(int status, Resource answer, @Nullable String type) {
    return Response.status(status)
        .type(FhirFormat.isXml(type) ? FhirFormat.XML : FhirFormat.JSON)
        .entity(format.write(answer, type))
        .build();
  }
}
