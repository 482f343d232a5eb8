package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
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
import org.driftward.alerts.contract.WardHandoverDesk;
import org.driftward.alerts.contract.WardHandoverDesk.Answer;
import org.driftward.dashboard.core.WardPapers;
import org.driftward.dashboard.screen.Findings;
import org.driftward.dashboard.screen.Outcome;
import org.driftward.dashboard.screen.SheetScreen;
import org.driftward.dashboard.screen.StartPage;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jboss.resteasy.reactive.RestForm;
import org.jspecify.annotations.Nullable;

/** The list with which a shift hands a ward over; giver and receiver sign. */
@Path("/wards/{ward}/handover")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class SheetPage {

  private static final int UNPROCESSABLE = 422;
  private static final int EARLIER = 6;

  private final Viewer viewer;
  private final WardHandoverDesk desk;
  private final WardPapers papers;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;
  private final Findings findings = new Findings(Catalogue.shipped());

  SheetPage(
      Viewer viewer,
      WardHandoverDesk desk,
      WardPapers papers,
      Frames frames,
      Answers answers,
      Clock clock) {
    this.viewer = viewer;
    this.desk = desk;
    this.papers = papers;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
  }

  @GET
  public Response sheet(@PathParam("ward") String ward) {
    Visit visit = Visit.of(viewer);
    return visit.sees(ward) ? page(visit, ward, 200, null) : answers.notYourWard(visit, here(ward));
  }

  /**
   * @param sheet the list as the giver saw it, so that nobody signs for what they have not read
   */
  @POST
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response give(
      @PathParam("ward") String ward,
      @RestForm @Nullable String sheet,
      @RestForm @Nullable String note) {
    Visit visit = Visit.of(viewer);
    if (!visit.sees(ward)) {
      return answers.notYourWard(visit, here(ward));
    }
    var seen = sheet == null ? "" : sheet.replace("\r\n", "\n");
    return told(visit, ward, desk.give(ward, seen, FormField.words(note), visit.actor()));
  }

  @POST
  @Path("{id}/receive")
  public Response receive(@PathParam("ward") String ward, @PathParam("id") String id) {
    Visit visit = Visit.of(viewer);
    if (!visit.sees(ward)) {
      return answers.notYourWard(visit, here(ward));
    }
    if (desk.find(id).filter(one -> one.ward().equals(ward)).isEmpty()) {
      return answers.unknown(visit, here(ward));
    }
    return told(visit, ward, desk.receive(id, visit.actor()));
  }

  private Response told(Visit visit, String ward, Answer answer) {
    if (answer instanceof Answer.Done) {
      return Response.seeOther(URI.create(here(ward) + "#signed")).build();
    }
    return page(visit, ward, UNPROCESSABLE, Outcome.incomplete(why(answer)));
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

  private Response page(Visit visit, String ward, int status, @Nullable Outcome outcome) {
    var paper = papers.of(ward);
    var screen =
        SheetScreen.of(
            paper, desk.recent(ward, EARLIER), findings, visit.reader(), clock.getZone(), outcome);
    var frame = frames.of(visit, here(ward)).at(paper.board().asOf());
    return Response.status(status)
        .type(MediaType.TEXT_HTML)
        .entity(Pages.sheet(frame, screen))
        .build();
  }

  private static String here(String ward) {
    return StartPage.board(ward) + "/handover";
  }
}
