package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.net.URI;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;

/** Leads from a patient to the record of the call about the open concern. */
@Path("/encounters/{encounter}/call")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class CallOfPatientPage {

  private final Viewer viewer;
  private final EpisodeDesk episodes;
  private final Answers answers;

  CallOfPatientPage(Viewer viewer, EpisodeDesk episodes, Answers answers) {
    this.viewer = viewer;
    this.episodes = episodes;
    this.answers = answers;
  }

  @GET
  public Response call(@PathParam("encounter") String encounter) {
    return episodes
        .running(encounter)
        .map(open -> Response.seeOther(URI.create("/episodes/" + open.id() + "/call")).build())
        .orElseGet(() -> answers.unknown(Visit.of(viewer), "/encounters/" + encounter + "/call"));
  }
}
