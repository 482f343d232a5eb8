package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.driftward.alerts.contract.HandoverDesk;
import org.driftward.alerts.contract.HandoverDesk.Answer;
import org.driftward.alerts.contract.HandoverDesk.Giving;
import org.driftward.alerts.contract.ShiftDesk;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.screen.HandoverScreen;
import org.driftward.dashboard.screen.Identity;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/** The text with which a patient is handed over: filled in, finished by a person, sent, printed. */
@Path("/encounters/{encounter}/handover")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class HandoverPage {

  private static final int UNPROCESSABLE = 422;

  private final Viewer viewer;
  private final HandoverDesk desk;
  private final ShiftDesk shifts;
  private final Patients patients;
  private final Frames frames;
  private final Answers answers;

  HandoverPage(
      Viewer viewer,
      HandoverDesk desk,
      ShiftDesk shifts,
      Patients patients,
      Frames frames,
      Answers answers) {
    this.viewer = viewer;
    this.desk = desk;
    this.shifts = shifts;
    this.patients = patients;
    this.frames = frames;
    this.answers = answers;
  }

  @GET
  public Response text(@PathParam("encounter") String encounter) {
    Visit visit = Visit.of(viewer);
    return page(visit, encounter, 200, HandoverForm.EMPTY, null);
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response give(@PathParam("encounter") String encounter, @BeanParam HandoverForm form) {
    Visit visit = Visit.of(viewer);
    var looked = patients.patient(encounter, viewer);
    if (!(looked instanceof Sight.Shown<PatientView>)) {
      return nothing(visit, encounter, looked);
    }
    if (!form.confirmed()) {
      return page(
          visit,
          encounter,
          UNPROCESSABLE,
          form,
          Outcome.incomplete("the recommendation waits for your confirmation"));
    }
    var giving =
        new Giving(encounter, form.receiver(), form.account(), form.text(), form.isReadBack());
    var answer = desk.give(giving, visit.actor());
    return answer instanceof Answer.Done
        ? Response.seeOther(URI.create(here(encounter) + "#earlier")).build()
        : page(visit, encounter, UNPROCESSABLE, form, Outcome.incomplete(why(answer)));
  }

  private static String why(Answer answer) {
    if (answer instanceof Answer.Incomplete incomplete) {
      return incomplete.field() + " " + incomplete.why();
    }
    if (answer instanceof Answer.NotAllowed notAllowed) {
      return notAllowed.why();
    }
    return answer instanceof Answer.NoLongerApplies late ? late.why() : "nothing is known of it";
  }

  private Response page(
      Visit visit, String encounter, int status, HandoverForm form, @Nullable Outcome outcome) {
    var looked = patients.patient(encounter, viewer);
    if (!(looked instanceof Sight.Shown<PatientView> shown)) {
      return nothing(visit, encounter, looked);
    }
    var view = shown.view();
    var elsewhere = Answers.ofSurvivor(view.encounter(), "handover");
    if (elsewhere != null) {
      return elsewhere;
    }
    var frame = frames.of(visit, here(encounter)).at(view.asOf());
    var draft = desk.draft(encounter, visit.actor());
    var text = form.isEmpty() ? draft.orElseThrow() : form.text();
    var screen =
        HandoverScreen.of(
            Identity.of(view.encounter(), frame.now(), frame.zone()),
            text,
            form.receiver(),
            form.account() == null ? "" : form.account(),
            shifts.running(view.encounter().ward()),
            desk.of(encounter),
            frame.now(),
            frame.zone(),
            outcome);
    return Response.status(status)
        .type(MediaType.TEXT_HTML)
        .entity(Pages.handover(frame, screen))
        .build();
  }

  private Response nothing(Visit visit, String encounter, Sight<PatientView> looked) {
    return looked instanceof Sight.OtherWard
        ? answers.notYourWard(visit, here(encounter))
        : answers.unknown(visit, here(encounter));
  }

  private static String here(String encounter) {
    return "/encounters/" + encounter + "/handover";
  }
}
