package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.screen.EpisodeScreen;
import org.driftward.dashboard.screen.Identity;
import org.driftward.dashboard.web.Patients;
import org.driftward.dashboard.web.Patients.Sight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;

/** One episode, running or over, as it went: where every figure of the measures leads. */
@Path("/episodes/{episode}")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({
  AccountRole.BEDSIDE,
  AccountRole.CHARGE,
  AccountRole.RESPONSE,
  AccountRole.MANAGER,
  AccountRole.ADMIN
})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class StoryPage {

  private final Viewer viewer;
  private final EpisodeDesk desk;
  private final DeliveryDesk deliveries;
  private final Patients patients;
  private final Frames frames;
  private final Answers answers;

  StoryPage(
      Viewer viewer,
      EpisodeDesk desk,
      DeliveryDesk deliveries,
      Patients patients,
      Frames frames,
      Answers answers) {
    this.viewer = viewer;
    this.desk = desk;
    this.deliveries = deliveries;
    this.patients = patients;
    this.frames = frames;
    this.answers = answers;
  }

  @GET
  public Response story(@PathParam("episode") String id) {
    Visit visit = Visit.of(viewer);
    String here = "/episodes/" + id;
    var episode = desk.find(id);
    if (episode.isEmpty()) {
      return answers.unknown(visit, here);
    }
    var looked = patients.patient(episode.get().encounter(), viewer);
    if (!(looked instanceof Sight.Shown<PatientView> shown)) {
      return looked instanceof Sight.OtherWard
          ? answers.notYourWard(visit, here)
          : answers.unknown(visit, here);
    }
    var frame = frames.of(visit, here).at(shown.view().asOf());
    var screen =
        EpisodeScreen.of(
            Identity.of(shown.view().encounter(), frame.now(), frame.zone()),
            episode.get(),
            desk.story(id),
            deliveries.of(id),
            visit.reader(),
            frame.now(),
            frame.zone());
    return Response.ok(Pages.episode(frame, screen)).build();
  }
}
