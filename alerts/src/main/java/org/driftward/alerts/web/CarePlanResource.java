package org.driftward.alerts.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.PUT;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.MediaType;
import org.driftward.alerts.contract.CarePlanDesk;
import org.driftward.alerts.contract.CarePlanDesk.RefusedException;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.scoring.contract.CarePlan;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** {@code PUT /api/encounters/{id}/care-plan}: signed, time-limited settings. */
@Path("/api/encounters")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@Tag(name = "care plans")
public class CarePlanResource {

  private final CarePlanDesk desk;
  private final EncounterDirectory directory;
  private final SignedIn signedIn;

  public CarePlanResource(CarePlanDesk desk, EncounterDirectory directory, SignedIn signedIn) {
    this.desk = desk;
    this.directory = directory;
    this.signedIn = signedIn;
  }

  @PUT
  @Path("/{id}/care-plan")
  @RolesAllowed({AccountRole.CHARGE, AccountRole.RESPONSE})
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "Sign a care plan",
      description =
          "Limits, interval and hold replace those of the plan before as a whole and end by themselves."
              + " Oxygen scale, populations, usual consciousness and ceiling stand until somebody signs"
              + " otherwise; what is left out stays. Altered limits change who is told, never the score."
              + " Oxygen scale 2 is a clinician's prescription.")
  @APIResponse(responseCode = "200", description = "Signed; the plan as it is kept")
  @APIResponse(responseCode = "400", description = "Not within local policy, or contradictory")
  public CarePlan put(@PathParam("id") String encounter, @Nullable PlanBody body) {
    var known = directory.find(encounter).filter(Encounter::present);
    signedIn.mustSee(known.orElseThrow(() -> Problems.unknown("encounter")).ward());
    if (body == null) {
      throw Problems.refused("", "a care plan is required");
    }
    try {
      return desk.sign(body.request(encounter), signedIn.actor());
    } catch (RefusedException e) {
      throw refused(e);
    } catch (IllegalArgumentException e) {
      throw Problems.refused("", String.valueOf(e.getMessage()));
    }
  }

  /** Why a plan ends before its time. */
  public record End(@Nullable String reason) {}

  @POST
  @Path("/{id}/care-plan/end")
  @RolesAllowed({AccountRole.CHARGE, AccountRole.RESPONSE})
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "End the care plan in force",
      description =
          "The standard settings are back at once, and a hold is lifted. Standing facts stand.")
  public CarePlan end(@PathParam("id") String encounter, @Nullable End body) {
    var known = directory.find(encounter).orElseThrow(() -> Problems.unknown("encounter"));
    signedIn.mustSee(known.ward());
    try {
      var reason = body == null || body.reason() == null ? "" : body.reason();
      return desk.end(encounter, reason, signedIn.actor());
    } catch (RefusedException e) {
      throw refused(e);
    }
  }

  private static WebApplicationException refused(RefusedException e) {
    return e.field().equals("signedBy")
        ? Problems.notAllowed(e.getMessage())
        : Problems.refused(e.field(), String.valueOf(e.getMessage()));
  }
}
