package org.driftward.dashboard.web.page;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import org.driftward.dashboard.core.WardPapers;
import org.driftward.dashboard.screen.DowntimeScreen;
import org.driftward.dashboard.screen.Findings;
import org.driftward.dashboard.screen.StartPage;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;

/** A ward to be printed for when the system is down. */
@Path("/wards/{ward}/downtime")
@ServedBy(Role.DASHBOARD)
@Page
@Authenticated
@Blocking
@Produces(MediaType.TEXT_HTML)
public class DowntimePage {

  private final Viewer viewer;
  private final WardPapers papers;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;
  private final Findings findings = new Findings(Catalogue.shipped());

  DowntimePage(Viewer viewer, WardPapers papers, Frames frames, Answers answers, Clock clock) {
    this.viewer = viewer;
    this.papers = papers;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
  }

  @GET
  public Response paper(@PathParam("ward") String ward) {
    Visit visit = Visit.of(viewer);
    String here = StartPage.board(ward) + "/downtime";
    if (!visit.sees(ward)) {
      return answers.notYourWard(visit, here);
    }
    var paper = papers.of(ward);
    var screen = DowntimeScreen.of(paper, findings, clock.getZone());
    var frame = frames.of(visit, here).at(paper.board().asOf());
    return Response.ok(Pages.downtime(frame, screen)).build();
  }
}
