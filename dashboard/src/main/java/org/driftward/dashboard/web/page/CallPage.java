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
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.CallDesk;
import org.driftward.alerts.contract.CallDesk.Answer;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.screen.CallScreen;
import org.driftward.dashboard.screen.Findings;
import org.driftward.dashboard.screen.Identity;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/** The record of a response team's call. */
@Path("/episodes/{episode}/call")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class CallPage {

  private static final int UNPROCESSABLE = 422;

  private final Viewer viewer;
  private final CallDesk desk;
  private final EpisodeDesk episodes;
  private final Patients patients;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;
  private final Findings findings = new Findings(Catalogue.shipped());

  CallPage(
      Viewer viewer,
      CallDesk desk,
      EpisodeDesk episodes,
      Patients patients,
      Frames frames,
      Answers answers,
      Clock clock) {
    this.viewer = viewer;
    this.desk = desk;
    this.episodes = episodes;
    this.patients = patients;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
  }

  @GET
  public Response call(@PathParam("episode") String id) {
    return page(Visit.of(viewer), id, 200, null);
  }

  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response record(@PathParam("episode") String id, @BeanParam CallForm form) {
    Visit visit = Visit.of(viewer);
    var episode = episodes.find(id);
    if (episode.isEmpty()) {
      return answers.unknown(visit, "");
    }
    if (!visit.sees(episode.get().ward())) {
      return answers.notYourWard(visit, "");
    }
    try {
      var entry = form.entry(clock.instant(), clock.getZone());
      return told(visit, id, desk.record(id, entry, visit.actor()));
    } catch (DateTimeException e) {
      return refused(visit, id, "a time is hours and minutes, as in 03:10");
    } catch (IllegalArgumentException e) {
      return refused(visit, id, "something is missing");
    }
  }

  private Response told(Visit visit, String id, Answer answer) {
    if (answer instanceof Answer.Done) {
      return Response.seeOther(URI.create("/episodes/" + id + "/call")).build();
    }
    if (answer instanceof Answer.Incomplete incomplete) {
      return refused(visit, id, incomplete.field() + " " + incomplete.why());
    }
    if (answer instanceof Answer.NotAllowed notAllowed) {
      return refused(visit, id, notAllowed.why());
    }
    return refused(visit, id, "the call is finished");
  }

  private Response refused(Visit visit, String id, String why) {
    return page(visit, id, UNPROCESSABLE, Outcome.incomplete(why));
  }

  private Response page(Visit visit, String id, int status, @Nullable Outcome outcome) {
    String here = "/episodes/" + id + "/call";
    var episode = episodes.find(id);
    if (episode.isEmpty()) {
      return answers.unknown(visit, here);
    }
    var looked = patients.patient(episode.get().encounter(), viewer);
    if (!(looked instanceof Sight.Shown<PatientView> shown)) {
      return looked instanceof Sight.OtherWard
          ? answers.notYourWard(visit, here)
          : answers.unknown(visit, here);
    }
    var view = shown.view();
    var frame = frames.of(visit, "/response").at(view.asOf());
    var call = desk.find(id).orElseGet(() -> notBegun(episode.get(), view));
    var who = Identity.of(view.encounter(), frame.now(), frame.zone());
    var screen =
        CallScreen.of(
            call, episode.get(), who, findings, visit.reader(), frame.now(), frame.zone(), outcome);
    return Response.status(status)
        .type(MediaType.TEXT_HTML)
        .entity(Pages.call(frame, screen))
        .build();
  }

  /** Looking at a record begins none. */
  private static Call notBegun(Episode episode, PatientView view) {
    return Call.notBegun(episode, view.standing().ceiling(), 0);
  }
}
