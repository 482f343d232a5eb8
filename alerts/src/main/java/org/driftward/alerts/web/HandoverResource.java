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
import java.util.List;
import java.util.Objects;
import org.driftward.alerts.contract.Handover;
import org.driftward.alerts.contract.HandoverDesk;
import org.driftward.alerts.contract.HandoverDesk.Answer;
import org.driftward.alerts.contract.HandoverDesk.Giving;
import org.driftward.alerts.contract.HandoverText;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.EncounterDirectory;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** {@code /api/encounters/{id}/handover}: a patient is handed over with a structured text. */
@Path("/api/encounters")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@Tag(name = "hand-over")
public class HandoverResource {

  private final HandoverDesk desk;
  private final EncounterDirectory directory;
  private final SignedIn signedIn;

  public HandoverResource(HandoverDesk desk, EncounterDirectory directory, SignedIn signedIn) {
    this.desk = desk;
    this.directory = directory;
    this.signedIn = signedIn;
  }

  /**
   * @param draft as the record fills it in
   * @param earlier newest first
   */
  public record Prepared(HandoverText draft, List<Handover> earlier) {}

  /**
   * @param receiver as people know them
   * @param receiverAccount sign-in name of whoever takes the running episode over
   * @param readBack whether the receiver repeated it
   */
  public record Body(
      @Nullable String receiver,
      @Nullable String receiverAccount,
      @Nullable String identify,
      @Nullable String situation,
      @Nullable String background,
      @Nullable String assessment,
      @Nullable String recommendation,
      @Nullable Boolean readBack) {

    HandoverText text() {
      return new HandoverText(
          or(identify), or(situation), or(background), or(assessment), or(recommendation));
    }

    private static String or(@Nullable String text) {
      return Objects.requireNonNullElse(text, "");
    }
  }

  @GET
  @Path("/{id}/handover")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
  @Operation(
      summary = "The drafted text, and what was handed over before",
      description =
          "Facts come from the record. The assessment is empty: a person writes it. The"
              + " recommendation is what the policy asks for and is marked as a draft.")
  public Prepared get(@PathParam("id") String encounter) {
    mustSee(encounter);
    return new Prepared(
        desk.draft(encounter, signedIn.actor()).orElseThrow(() -> Problems.unknown("encounter")),
        desk.of(encounter));
  }

  @POST
  @Path("/{id}/handover")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "Hand the patient over",
      description = "With receiverAccount the running episode goes to them in the same step.")
  @APIResponse(responseCode = "200", description = "Kept")
  @APIResponse(responseCode = "409", description = "Nobody has answered the episode yet")
  public Handover post(@PathParam("id") String encounter, @Nullable Body body) {
    mustSee(encounter);
    if (body == null) {
      throw Problems.refused("", "a hand-over is required");
    }
    var giving =
        new Giving(
            encounter,
            body.receiver() == null ? "" : body.receiver(),
            body.receiverAccount(),
            body.text(),
            Boolean.TRUE.equals(body.readBack()));
    var answer = desk.give(giving, signedIn.actor());
    if (answer instanceof Answer.Done done) {
      return done.handover();
    }
    if (answer instanceof Answer.Incomplete incomplete) {
      throw Problems.refused(incomplete.field(), incomplete.why());
    }
    if (answer instanceof Answer.NotAllowed notAllowed) {
      throw Problems.notAllowed(notAllowed.why());
    }
    if (answer instanceof Answer.NoLongerApplies late) {
      throw Problems.tooLate(late.why());
    }
    throw Problems.unknown("encounter");
  }

  private void mustSee(String encounter) {
    signedIn.mustSee(
        directory.find(encounter).orElseThrow(() -> Problems.unknown("encounter")).ward());
  }
}
