package org.driftward.ingest.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Instant;
import java.util.concurrent.CompletionStage;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.media.Content;
import org.eclipse.microprofile.openapi.annotations.media.Schema;
import org.eclipse.microprofile.openapi.annotations.parameters.RequestBody;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** {@code PUT /api/encounters/{id}}: admit, move, update or discharge. */
@Path("/api/encounters")
@ServedBy(Role.INGEST)
@RolesAllowed({AccountRole.CHARGE, AccountRole.INTEGRATION, AccountRole.ADMIN})
@Tag(name = "intake")
public class EncounterResource {

  private final EncounterGate gate;
  private final BodyLimit bodyLimit;
  private final Sender sender;

  public EncounterResource(EncounterGate gate, BodyLimit bodyLimit, Sender sender) {
    this.gate = gate;
    this.bodyLimit = bodyLimit;
    this.sender = sender;
  }

  /** The body, for the interface's description; it is read field by field. */
  @Schema(name = "EncounterState")
  record Body(
      Patient patient,
      String ward,
      @Nullable String bed,
      Instant admitted,
      @Nullable Instant discharged) {}

  @PUT
  @Path("/{id}")
  @Blocking
  @Consumes(MediaType.APPLICATION_JSON)
  @Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
  @Operation(
      summary = "Admit, move, update or discharge",
      description =
          "The whole state as the sender knows it. Another ward or bed than before is a move, as of"
              + " now. An absent discharge means that the patient is in the house.")
  @RequestBody(required = true, content = @Content(schema = @Schema(implementation = Body.class)))
  @APIResponse(
      responseCode = "200",
      description = "Kept",
      content = @Content(schema = @Schema(implementation = AcceptedIds.class)))
  @APIResponse(
      responseCode = "400",
      description = "Refused; every fault by JSON pointer",
      content =
          @Content(
              mediaType = Problem.MEDIA_TYPE,
              schema = @Schema(implementation = Problem.class)))
  @APIResponse(responseCode = "403", description = "A ward that the account does not see")
  @APIResponse(responseCode = "503", description = "Not promised; repeat after Retry-After")
  public CompletionStage<Response> put(@PathParam("id") String id, byte[] body) {
    bodyLimit.check(body);
    var received = sender.received(EncounterGate.target(id), body);
    return Answers.of(gate.bring(received, sender.bearer()), Response.Status.OK);
  }
}
