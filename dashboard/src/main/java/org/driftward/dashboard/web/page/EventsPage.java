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
import java.time.Clock;
import java.time.DateTimeException;
import org.driftward.alerts.contract.ClinicalEvent.Kind;
import org.driftward.alerts.contract.EventDesk;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.screen.EventsScreen;
import org.driftward.dashboard.screen.Identity;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.screen.TimeOfDay;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.driftward.ingest.contract.Word;
import org.jspecify.annotations.Nullable;

/** Arrest, move to intensive care, death and intervention: what happened during a stay. */
@Path("/encounters/{encounter}/events")
@ServedBy(Role.DASHBOARD)
@Page
@Blocking
@Produces(MediaType.TEXT_HTML)
public class EventsPage {

  private static final int UNPROCESSABLE = 422;
  private static final int LONGEST_NOTE = 2_000;

  private final Viewer viewer;
  private final EventDesk desk;
  private final Patients patients;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;

  EventsPage(
      Viewer viewer,
      EventDesk desk,
      Patients patients,
      Frames frames,
      Answers answers,
      Clock clock) {
    this.viewer = viewer;
    this.desk = desk;
    this.patients = patients;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
  }

  @GET
  @RolesAllowed({
    AccountRole.BEDSIDE,
    AccountRole.CHARGE,
    AccountRole.RESPONSE,
    AccountRole.MANAGER,
    AccountRole.ADMIN
  })
  public Response events(@PathParam("encounter") String encounter) {
    return page(encounter, 200, null);
  }

  @POST
  @RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response record(@PathParam("encounter") String encounter, @BeanParam EventForm form) {
    Visit visit = Visit.of(viewer);
    var looked = patients.patient(encounter, viewer);
    if (!(looked instanceof Sight.Shown<PatientView> shown)) {
      return notShown(visit, encounter, looked);
    }
    var note = form.words();
    if (note != null && note.length() > LONGEST_NOTE) {
      return refused(encounter, "the note is longer than " + LONGEST_NOTE + " characters");
    }
    try {
      desk.record(
          encounter,
          shown.view().encounter().ward(),
          Word.parse(Kind.class, String.valueOf(form.kind)),
          TimeOfDay.past(form.at, clock.instant(), clock.getZone()),
          form.notForResuscitation != null,
          form.expected != null,
          note,
          visit.actor());
      return Response.seeOther(URI.create(here(encounter))).build();
    } catch (DateTimeException e) {
      return refused(encounter, "a time is hours and minutes, as in 03:10");
    } catch (IllegalArgumentException e) {
      return refused(encounter, String.valueOf(e.getMessage()));
    }
  }

  private Response refused(String encounter, String why) {
    return page(encounter, UNPROCESSABLE, Outcome.incomplete(why));
  }

  private Response page(String encounter, int status, @Nullable Outcome outcome) {
    Visit visit = Visit.of(viewer);
    var looked = patients.patient(encounter, viewer);
    if (!(looked instanceof Sight.Shown<PatientView> shown)) {
      return notShown(visit, encounter, looked);
    }
    var elsewhere = Answers.ofSurvivor(shown.view().encounter(), "events");
    if (elsewhere != null) {
      return elsewhere;
    }
    var frame = frames.of(visit, here(encounter)).at(shown.view().asOf());
    var who = Identity.of(shown.view().encounter(), frame.now(), frame.zone());
    var screen =
        EventsScreen.of(
            who, desk.of(encounter), visit.reader(), frame.now(), frame.zone(), outcome);
    return Response.status(status).entity(Pages.events(frame, screen)).build();
  }

  private Response notShown(Visit visit, String encounter, Sight<PatientView> looked) {
    return looked instanceof Sight.OtherWard
        ? answers.notYourWard(visit, here(encounter))
        : answers.unknown(visit, here(encounter));
  }

  private static String here(String encounter) {
    return "/encounters/" + encounter + "/events";
  }
}
