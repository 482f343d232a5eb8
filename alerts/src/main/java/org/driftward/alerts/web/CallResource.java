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
import java.util.Set;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Call.Caller;
import org.driftward.alerts.contract.Call.CallerRole;
import org.driftward.alerts.contract.Call.Disposition;
import org.driftward.alerts.contract.Call.Ending;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.Call.TreatmentKind;
import org.driftward.alerts.contract.CallDesk;
import org.driftward.alerts.contract.CallDesk.Answer;
import org.driftward.alerts.contract.CallDesk.Entry;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Problem;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.contract.Word;
import org.eclipse.microprofile.openapi.annotations.Operation;
import org.eclipse.microprofile.openapi.annotations.responses.APIResponse;
import org.eclipse.microprofile.openapi.annotations.tags.Tag;
import org.jspecify.annotations.Nullable;

/** The record of a response team's call, one for an episode. */
@Path("/api/episodes")
@ServedBy(Role.ALERTS)
@Produces({MediaType.APPLICATION_JSON, Problem.MEDIA_TYPE})
@Blocking
@Tag(name = "calls")
public class CallResource {

  private final CallDesk desk;
  private final EpisodeDesk episodes;
  private final SignedIn signedIn;

  public CallResource(CallDesk desk, EpisodeDesk episodes, SignedIn signedIn) {
    this.desk = desk;
    this.episodes = episodes;
    this.signedIn = signedIn;
  }

  /**
   * One entry; exactly one of step, caller, present, treatment, to and disposition says which.
   *
   * @param caller {@code nurse}, {@code doctor}, {@code other-staff}, {@code patient} or {@code
   *     family}
   * @param callerName of the person who called, if it is to be kept
   * @param at when it happened; now unless given
   */
  public record Body(
      @Nullable String step,
      @Nullable String caller,
      @Nullable String callerName,
      @Nullable Set<String> present,
      @Nullable String treatment,
      @Nullable String to,
      @Nullable String toName,
      @Nullable String disposition,
      @Nullable String plan,
      @Nullable String recipient,
      @Nullable Instant nextSet,
      @Nullable String note,
      @Nullable Instant at) {

    Entry entry() {
      if (step != null) {
        return new Entry.Reached(parsed(Step.class, "step", step), at);
      }
      if (caller != null) {
        return new Entry.CalledBy(
            new Caller(parsed(CallerRole.class, "caller", caller), callerName));
      }
      if (present != null) {
        return new Entry.Present(present);
      }
      if (treatment != null) {
        return new Entry.Treated(parsed(TreatmentKind.class, "treatment", treatment), note, at);
      }
      if (to != null) {
        return new Entry.HandedOver(to, toName, note == null ? "" : note);
      }
      if (disposition != null) {
        var where = parsed(Disposition.class, "disposition", disposition);
        return new Entry.Finished(new Ending(where, plan, recipient, nextSet), at);
      }
      throw Problems.refused(
          "", "one of step, caller, present, treatment, to, disposition is required");
    }
  }

  @GET
  @Path("/{id}/call")
  @RolesAllowed({
    AccountRole.BEDSIDE,
    AccountRole.CHARGE,
    AccountRole.RESPONSE,
    AccountRole.MANAGER,
    AccountRole.ADMIN
  })
  @Operation(
      summary = "The record of the call",
      description = "Vital signs at the trigger, at arrival and at the end come from the record.")
  public Call get(@PathParam("id") String id) {
    mustSee(id);
    return desk.find(id).orElseThrow(() -> Problems.unknown("call"));
  }

  @POST
  @Path("/{id}/call")
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
  @Consumes(MediaType.APPLICATION_JSON)
  @Operation(
      summary = "Record something of the call",
      description =
          "The first entry begins the record. The step received acknowledges the episode,"
              + " at-bedside attends it, handing over hands it over. A late entry names its time and"
              + " keeps both.")
  @APIResponse(responseCode = "200", description = "Recorded; the call as it is now")
  @APIResponse(responseCode = "409", description = "The call is finished")
  public Call post(@PathParam("id") String id, @Nullable Body body) {
    mustSee(id);
    if (body == null) {
      throw Problems.refused("", "an entry is required");
    }
    var answer = desk.record(id, body.entry(), signedIn.actor());
    if (answer instanceof Answer.Done done) {
      return done.call();
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
    throw Problems.unknown("episode");
  }

  private void mustSee(String id) {
    signedIn.mustSee(episodes.find(id).orElseThrow(() -> Problems.unknown("episode")).ward());
  }

  private static <E extends Enum<E> & Word> E parsed(Class<E> type, String field, String word) {
    try {
      return Word.parse(type, word);
    } catch (IllegalArgumentException e) {
      throw Problems.refused(field, String.valueOf(e.getMessage()));
    }
  }
}
