package org.driftward.alerts.web;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import java.time.Instant;
import java.time.format.DateTimeParseException;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.Contact;
import org.driftward.alerts.contract.Duty;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.ShiftDesk;
import org.driftward.alerts.contract.ShiftDesk.Answer;
import org.driftward.alerts.contract.ShiftDesk.Begin;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.contract.Word;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** Who is on duty. The ward {@code *} stands for every ward: a response team, somebody on call. */
@Path("/api/wards")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@Tag(name = "shifts")
public class ShiftResource {

  private final ShiftDesk desk;
  private final SignedIn signedIn;

  public ShiftResource(ShiftDesk desk, SignedIn signedIn) {
    this.desk = desk;
    this.signedIn = signedIn;
  }

  /**
   * @param account the sender's own unless given
   * @param name as people know them
   * @param until the policy's usual length unless given
   * @param takesOver the running shift that ends with it
   * @param contact how the person is told of alarms beyond the board; the policy's way unless given
   */
  public record Beginning(
      @Nullable String duty,
      @Nullable String account,
      @Nullable String name,
      @Nullable Set<String> beds,
      @Nullable Instant until,
      @Nullable String takesOver,
      @Nullable Telling contact) {}

  /** As {@link Contact}, not yet looked at. */
  public record Telling(@Nullable String mail, @Nullable String webhook, @Nullable String number) {

    Contact contact() {
      try {
        return new Contact(mail, webhook, number);
      } catch (IllegalArgumentException e) {
        throw Problems.refused("contact", String.valueOf(e.getMessage()));
      }
    }
  }

  @GET
  @Path("/{ward}/shifts")
  @RolesAllowed({
    AccountRole.BEDSIDE,
    AccountRole.CHARGE,
    AccountRole.RESPONSE,
    AccountRole.MANAGER,
    AccountRole.ADMIN
  })
  @Operation(
      summary = "Who is on duty",
      description = "Now, or with from and to whoever was on duty in that time, newest first.")
  public List<Shift> list(
      @PathParam("ward") String ward,
      @QueryParam("from") @Nullable String from,
      @QueryParam("to") @Nullable String to) {
    signedIn.mustSee(ward);
    return from == null && to == null
        ? desk.running(ward)
        : desk.between(ward, time("from", from), time("to", to));
  }

  @POST
  @Path("/{ward}/shifts")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE, AccountRole.ADMIN})
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "Come on duty, or take over",
      description =
          "A ward has one charge nurse: the next one takes over. Only whoever is in charge sets the"
              + " duty of somebody else.")
  @APIResponse(responseCode = "200", description = "On duty; the shift")
  public Shift begin(@PathParam("ward") String ward, @Nullable Beginning body) {
    signedIn.mustSee(ward);
    if (body == null || body.duty() == null) {
      throw Problems.refused("duty", "is required");
    }
    var actor = signedIn.actor();
    var account = body.account() == null ? actor.account() : body.account();
    var ownName = account.equals(actor.account()) ? actor.name() : "";
    return answer(
        desk.begin(
            new Begin(
                ward,
                duty(body.duty()),
                account,
                body.name() == null ? ownName : body.name(),
                body.beds() == null ? Set.of() : body.beds(),
                body.until(),
                body.takesOver(),
                body.contact() == null ? null : body.contact().contact()),
            actor));
  }

  @POST
  @Path("/{ward}/shifts/{shift}/end")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE, AccountRole.ADMIN})
  @Operation(
      summary = "Go off duty",
      description =
          "What the person owned passes to whoever took over, looks after the bed, or is in charge;"
              + " else the clock runs again.")
  public Shift end(@PathParam("ward") String ward, @PathParam("shift") String shift) {
    signedIn.mustSee(ward);
    if (desk.find(shift).filter(known -> known.ward().equals(ward)).isEmpty()) {
      throw Problems.unknown("shift");
    }
    return answer(desk.end(shift, signedIn.actor()));
  }

  private static Shift answer(Answer answer) {
    if (answer instanceof Answer.Done done) {
      return done.shift();
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
    throw Problems.unknown("shift");
  }

  private static Duty duty(String word) {
    try {
      return Word.parse(Duty.class, word);
    } catch (IllegalArgumentException e) {
      throw Problems.refused("duty", String.valueOf(e.getMessage()));
    }
  }

  private static Instant time(String field, @Nullable String text) {
    try {
      return Instant.parse(String.valueOf(text));
    } catch (DateTimeParseException e) {
      throw Problems.refused(field, "is a time, for example 2026-01-05T07:00:00Z");
    }
  }
}
