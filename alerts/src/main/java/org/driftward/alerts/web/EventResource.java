package org.driftward.alerts.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.contract.EventDesk;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.contract.Word;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** {@code /api/encounters/{id}/events}: arrest, move to intensive care, death, intervention. */
@Path("/api/encounters")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@Tag(name = "calls")
public class EventResource {

  private final EventDesk desk;
  private final EncounterDirectory directory;
  private final SignedIn signedIn;

  public EventResource(EventDesk desk, EncounterDirectory directory, SignedIn signedIn) {
    this.desk = desk;
    this.directory = directory;
    this.signedIn = signedIn;
  }

  /**
   * @param kind {@code arrest}, {@code intensive-care}, {@code death} or {@code intervention}
   * @param at when it happened; now unless given
   * @param expected whether a death was expected, or a move planned
   */
  public record Body(
      @Nullable String kind,
      @Nullable Instant at,
      @Nullable Boolean notForResuscitation,
      @Nullable Boolean expected,
      @Nullable String note) {}

  @GET
  @Path("/{id}/events")
  @RolesAllowed({
    AccountRole.BEDSIDE,
    AccountRole.CHARGE,
    AccountRole.RESPONSE,
    AccountRole.MANAGER,
    AccountRole.ADMIN
  })
  @Operation(summary = "Clinical events of the stay, oldest first")
  public List<ClinicalEvent> get(@PathParam("id") String encounter) {
    seenWard(encounter);
    return desk.of(encounter);
  }

  @POST
  @Path("/{id}/events")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "Record an arrest, a move to intensive care, a death or a critical intervention")
  public ClinicalEvent post(@PathParam("id") String encounter, @Nullable Body body) {
    var ward = seenWard(encounter);
    if (body == null || body.kind() == null) {
      throw Problems.refused("kind", "is required");
    }
    if (body.note() != null && body.note().length() > 2000) {
      throw Problems.refused("note", "is longer than 2000 characters");
    }
    try {
      return desk.record(
          encounter,
          ward,
          Word.parse(ClinicalEvent.Kind.class, body.kind()),
          body.at(),
          Boolean.TRUE.equals(body.notForResuscitation()),
          Boolean.TRUE.equals(body.expected()),
          body.note(),
          signedIn.actor());
    } catch (IllegalArgumentException e) {
      throw Problems.refused("", String.valueOf(e.getMessage()));
    }
  }

  private String seenWard(String encounter) {
    var ward = directory.find(encounter).orElseThrow(() -> Problems.unknown("encounter")).ward();
    signedIn.mustSee(ward);
    return ward;
  }
}
