package org.driftward.scoring.web;

import io.quarkus.security.identity.SecurityIdentity;
import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.core.StreamingOutput;
import java.net.URI;
import java.util.List;
import java.util.stream.Stream;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.scoring.core.compare.Difference;
import org.driftward.scoring.rescore.RescoreView;
import org.driftward.scoring.rescore.Rescores;
import org.driftward.scoring.rescore.Rescores.ConflictException;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** {@code /api/rescores}: what another policy or another score would say of everything so far. */
@Path("/api/rescores")
@ServedBy(Role.SCORING)
@RolesAllowed(AccountRole.ADMIN)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@Tag(name = "re-scoring")
public class RescoreResource {

  private static final String CSV = "text/csv";

  private final Rescores rescores;
  private final SecurityIdentity identity;

  public RescoreResource(Rescores rescores, SecurityIdentity identity) {
    this.rescores = rescores;
    this.identity = identity;
  }

  @POST
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "Score the log again under another edition",
      description =
          "Reads the whole log beside what is in force and reports every difference. Nothing changes"
              + " until the edition is adopted. Ask the process that began it: it keeps the report.")
  @APIResponse(responseCode = "202", description = "Begun")
  @APIResponse(responseCode = "400", description = "The edition is broken; text, line and fault")
  @APIResponse(responseCode = "409", description = "Another re-scoring is running")
  public Response begin(@Nullable EditionBody body) {
    if (body == null) {
      throw Problems.refused("", "an edition is required");
    }
    try {
      var begun = rescores.begin(body.file(), account());
      return Response.accepted(begun).location(URI.create("/api/rescores/" + begun.id())).build();
    } catch (ConflictException e) {
      throw Problems.conflict(e);
    } catch (IllegalArgumentException | IllegalStateException e) {
      throw Problems.refused("", String.valueOf(e.getMessage()));
    }
  }

  @GET
  @Operation(summary = "The re-scorings of this process, newest first")
  public List<RescoreView> list() {
    return rescores.list();
  }

  @GET
  @Path("/{id}")
  @Operation(summary = "Where a re-scoring stands, with its counts")
  public RescoreView find(@PathParam("id") String id) {
    return rescores.find(id).orElseThrow(Problems::unknown);
  }

  @GET
  @Path("/{id}/differences")
  @Operation(summary = "Every difference, by encounter and time")
  public Response differences(@PathParam("id") String id) {
    return written(id, MediaType.APPLICATION_JSON, DifferenceWriter::json);
  }

  @GET
  @Path("/{id}/differences")
  @Produces(CSV)
  @Operation(summary = "Every difference, as a table")
  public Response table(@PathParam("id") String id) {
    return written(id, CSV, DifferenceWriter::csv);
  }

  @POST
  @Path("/{id}/adopt")
  @Operation(
      summary = "Put the edition of a finished re-scoring into force",
      description =
          "Everything taken since its time is judged again and said again, by every process that"
              + " scores. It cannot be taken back; adopt another edition.")
  @APIResponse(responseCode = "200", description = "Adopted")
  @APIResponse(responseCode = "409", description = "Not finished, or another edition came first")
  public RescoreView adopt(@PathParam("id") String id) {
    try {
      return rescores.adopt(id, account()).orElseThrow(Problems::unknown);
    } catch (ConflictException e) {
      throw Problems.conflict(e);
    }
  }

  private Response written(String id, String type, DifferenceWriter writer) {
    Stream<Difference> differences;
    try {
      differences = rescores.differences(id).orElseThrow(Problems::unknown);
    } catch (ConflictException e) {
      throw Problems.conflict(e);
    }
    StreamingOutput body =
        out -> {
          try (differences) {
            writer.write(differences.iterator(), out);
          }
        };
    return Response.ok(body, type).build();
  }

  private String account() {
    return identity.getPrincipal().getName();
  }
}
