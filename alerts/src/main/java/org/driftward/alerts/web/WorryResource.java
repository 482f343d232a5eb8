package org.driftward.alerts.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.contract.EpisodeView;
import org.driftward.alerts.contract.WorryDesk;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** {@code POST /api/encounters/{id}/worry}: somebody at the bedside is worried. */
@Path("/api/encounters")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@Tag(name = "episodes")
public class WorryResource {

  private final WorryDesk desk;
  private final DeliveryDesk deliveries;
  private final EncounterDirectory directory;
  private final SignedIn signedIn;

  public WorryResource(
      WorryDesk desk, DeliveryDesk deliveries, EncounterDirectory directory, SignedIn signedIn) {
    this.desk = desk;
    this.deliveries = deliveries;
    this.directory = directory;
    this.signedIn = signedIn;
  }

  /**
   * @param note or null
   */
  public record Worry(@Nullable String note) {}

  @POST
  @Path("/{id}/worry")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "Say that you are worried",
      description =
          "A reason to escalate by itself; no number is needed. The answer says under told whom"
              + " the alarm has reached so far, which may be nobody.")
  public EpisodeView post(@PathParam("id") String encounter, @Nullable Worry body) {
    var known = directory.find(encounter).filter(Encounter::present);
    signedIn.mustSee(known.orElseThrow(() -> Problems.unknown("encounter")).ward());
    var note = body == null || body.note() == null ? "" : body.note();
    if (note.length() > 2000) {
      throw Problems.refused("note", "is longer than 2000 characters");
    }
    return desk.worry(encounter, note, signedIn.actor())
        .map(episode -> EpisodeView.of(episode, deliveries.present(episode.id())))
        .orElseThrow(() -> Problems.unknown("encounter"));
  }
}
