package org.driftward.ingest.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.util.concurrent.CompletionStage;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;

/** {@code POST /api/assessments}: one assessment or an array of them, all or nothing. */
@Path("/api/assessments")
@ServedBy(Role.INGEST)
@RolesAllowed({
  AccountRole.BEDSIDE,
  AccountRole.CHARGE,
  AccountRole.RESPONSE,
  AccountRole.INTEGRATION,
  AccountRole.ADMIN
})
@Tag(name = "intake")
public class AssessmentResource {

  private final AssessmentGate gate;
  private final BodyLimit bodyLimit;
  private final Sender sender;

  public AssessmentResource(AssessmentGate gate, BodyLimit bodyLimit, Sender sender) {
    this.gate = gate;
    this.bodyLimit = bodyLimit;
    this.sender = sender;
  }

  @POST
  @Blocking
  @Consumes(MediaType.APPLICATION_JSON)
  @Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
  @Operation(
      summary = "Send assessments",
      description =
          "One assessment or an array; all or nothing. Sending the same id and revision again is"
              + " accepted again and changes nothing.")
  @RequestBody(
      required = true,
      content =
          @Content(
              mediaType = MediaType.APPLICATION_JSON,
              schema = @Schema(oneOf = {Assessment.class, Assessment[].class})))
  @APIResponse(
      responseCode = "202",
      description = "Kept",
      content = @Content(schema = @Schema(implementation = AcceptedIds.class)))
  @APIResponse(
      responseCode = "400",
      description = "Refused whole; every fault by JSON pointer",
      content =
          @Content(
              mediaType = Problem.MEDIA_TYPE,
              schema = @Schema(implementation = Problem.class)))
  @APIResponse(responseCode = "403", description = "A ward that the account does not see")
  @APIResponse(responseCode = "413", description = "Larger than the limit")
  @APIResponse(responseCode = "503", description = "Not promised; repeat after Retry-After")
  public CompletionStage<Response> post(byte[] body) {
    bodyLimit.check(body);
    var received = sender.received(AssessmentGate.TARGET, body);
    return Answers.of(gate.bring(received, sender.bearer()), Response.Status.ACCEPTED);
  }
}
