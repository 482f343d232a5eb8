package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.HeaderParam;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import java.time.Clock;
import java.util.function.Function;
import org.driftward.alerts.contract.CarePlanDesk;
import org.driftward.alerts.contract.CarePlanDesk.RefusedException;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.screen.Wording;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.scoring.contract.CarePlan;
import org.jspecify.annotations.Nullable;

/** Where the forms about a patient's care plan are sent. */
@Path("/encounters/{encounter}/care-plan")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.CHARGE, AccountRole.RESPONSE})
@Blocking
@Consumes(MediaType.APPLICATION_FORM_URLENCODED)
@Produces(MediaType.TEXT_HTML)
public class PlanPage {

  private static final int UNPROCESSABLE = 422;

  private final Viewer viewer;
  private final CarePlanDesk desk;
  private final WardReader wards;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;

  PlanPage(
      Viewer viewer,
      CarePlanDesk desk,
      WardReader wards,
      Frames frames,
      Answers answers,
      Clock clock) {
    this.viewer = viewer;
    this.desk = desk;
    this.wards = wards;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
  }

  @POST
  public Response sign(
      @PathParam("encounter") String encounter,
      @BeanParam PlanForm form,
      @HeaderParam("HX-Request") @Nullable String scripted) {
    Visit visit = Visit.of(viewer);
    return answered(
        visit,
        encounter,
        scripted != null,
        before -> {
          var plan = desk.sign(form.request(encounter, before, clock.instant()), visit.actor());
          return Outcome.done(
              plan.holdsOnlyForAWhile()
                  ? "Signed. Limits, interval and hold end " + until(plan) + "."
                  : "Signed. Nothing in it ends by itself.");
        });
  }

  @POST
  @Path("end")
  public Response end(
      @PathParam("encounter") String encounter,
      @FormParam("reason") @Nullable String reason,
      @HeaderParam("HX-Request") @Nullable String scripted) {
    Visit visit = Visit.of(viewer);
    return answered(
        visit,
        encounter,
        scripted != null,
        before -> {
          desk.end(encounter, reason == null ? "" : reason.strip(), visit.actor());
          return Outcome.done(
              "The care plan has ended. The standard settings are back; what stands, stands.");
        });
  }

  private String until(CarePlan plan) {
    return Wording.time(plan.until(), clock.instant(), clock.getZone());
  }

  private Response answered(
      Visit visit, String encounter, boolean scripted, Function<@Nullable CarePlan, Outcome> work) {
    var known = wards.patient(encounter);
    if (known.isEmpty()) {
      return answers.unknown(visit, "");
    }
    if (!visit.sees(known.get().encounter().ward())) {
      return answers.notYourWard(visit, "");
    }
    try {
      var outcome = work.apply(known.get().carePlan());
      return scripted
          ? fragment(200, outcome)
          : Response.seeOther(URI.create("/encounters/" + encounter)).build();
    } catch (RefusedException e) {
      return refused(visit, (e.field() + " " + e.getMessage()).strip(), scripted);
    } catch (IllegalArgumentException e) {
      return refused(visit, String.valueOf(e.getMessage()), scripted);
    }
  }

  private Response refused(Visit visit, String why, boolean scripted) {
    var outcome = Outcome.incomplete(why);
    return scripted
        ? fragment(UNPROCESSABLE, outcome)
        : answers.page(UNPROCESSABLE, frames.of(visit, ""), "Nothing was changed", outcome.words());
  }

  private static Response fragment(int status, Outcome outcome) {
    return Response.status(status).type(MediaType.TEXT_HTML).entity(Pages.outcome(outcome)).build();
  }
}
