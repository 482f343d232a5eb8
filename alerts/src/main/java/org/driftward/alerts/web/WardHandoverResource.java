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
import org.driftward.alerts.contract.WardHandover;
import org.driftward.alerts.contract.WardHandoverDesk;
import org.driftward.alerts.contract.WardHandoverDesk.Answer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** {@code /api/wards/{ward}/handovers}: one shift hands the ward to the next; both sign. */
@Path("/api/wards")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@Tag(name = "hand-over")
public class WardHandoverResource {

  private static final int NEWEST = 50;

  private final WardHandoverDesk desk;
  private final SignedIn signedIn;

  public WardHandoverResource(WardHandoverDesk desk, SignedIn signedIn) {
    this.desk = desk;
    this.signedIn = signedIn;
  }

  /**
   * @param sheet the list that is handed over, as plain text
   */
  public record Body(@Nullable String sheet, @Nullable String note) {}

  @GET
  @Path("/{ward}/handovers")
  @RolesAllowed({
    AccountRole.BEDSIDE,
    AccountRole.CHARGE,
    AccountRole.RESPONSE,
    AccountRole.MANAGER,
    AccountRole.ADMIN
  })
  @Operation(summary = "The ward's hand-overs, newest first, at most 50")
  public List<WardHandover> list(@PathParam("ward") String ward) {
    signedIn.mustSee(ward);
    return desk.recent(ward, NEWEST);
  }

  @POST
  @Path("/{ward}/handovers")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(summary = "Sign as the giver")
  public WardHandover give(@PathParam("ward") String ward, @Nullable Body body) {
    signedIn.mustSee(ward);
    if (body == null || body.sheet() == null) {
      throw Problems.refused("sheet", "is required");
    }
    return answer(desk.give(ward, body.sheet(), body.note(), signedIn.actor()));
  }

  @POST
  @Path("/{ward}/handovers/{id}/receive")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
  @Operation(summary = "Sign as the receiver")
  public WardHandover receive(@PathParam("ward") String ward, @PathParam("id") String id) {
    signedIn.mustSee(ward);
    if (desk.find(id).filter(known -> known.ward().equals(ward)).isEmpty()) {
      throw Problems.unknown("hand-over");
    }
    return answer(desk.receive(id, signedIn.actor()));
  }

  private static WardHandover answer(Answer answer) {
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
    throw Problems.unknown("hand-over");
  }
}
