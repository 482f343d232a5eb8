package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.Consumes;
import jakarta.ws.rs.FormParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.POST;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.driftward.alerts.contract.AuditDesk;
import org.driftward.alerts.contract.AuditReport;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.core.WardReader.WardLine;
import org.driftward.dashboard.screen.audit.AuditScreen;
import org.driftward.dashboard.screen.audit.TrialScreen;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/** The manager's measures by ward and month, and what another policy would have done. */
@Path("/audit")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.MANAGER, AccountRole.ADMIN})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class AuditPage {

  private static final String HERE = "/audit";
  private static final int MONTHS = 6;
  private static final int UNPROCESSABLE = 422;

  private final Viewer viewer;
  private final WardReader wards;
  private final AuditDesk desk;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;

  AuditPage(
      Viewer viewer,
      WardReader wards,
      AuditDesk desk,
      Frames frames,
      Answers answers,
      Clock clock) {
    this.viewer = viewer;
    this.wards = wards;
    this.desk = desk;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
  }

  @GET
  public Response audit(
      @QueryParam("ward") @Nullable String ward, @QueryParam("month") @Nullable String month) {
    Visit visit = Visit.of(viewer);
    var asked = MonthAsked.of(ward, month, clock);
    if (!asked.mayBeSeenBy(visit)) {
      return answers.notYourWard(visit, HERE);
    }
    Map<YearMonth, AuditReport> months = new LinkedHashMap<>();
    for (int back = MONTHS - 1; back >= 0; back--) {
      var one = asked.in(asked.month().minusMonths(back));
      months.put(one.month(), desk.report(one.question(visit)));
    }
    Map<String, AuditReport> perWard = new LinkedHashMap<>();
    if (asked.ward() == null) {
      wardsOf(visit).forEach(one -> perWard.put(one, desk.report(asked.on(one).question(visit))));
    }
    var screen =
        AuditScreen.of(
            asked.ward(),
            wardsOf(visit),
            asked.month(),
            asked.query(),
            asked.callQuery(),
            months,
            perWard);
    return Response.ok(Pages.audit(frames.of(visit, HERE), screen)).build();
  }

  @GET
  @Path("trial")
  public Response trial(
      @QueryParam("ward") @Nullable String ward, @QueryParam("month") @Nullable String month) {
    Visit visit = Visit.of(viewer);
    var asked = MonthAsked.of(ward, month, clock);
    var screen =
        TrialScreen.before(
            asked.ward(), wardsOf(visit), asked.month().toString(), desk.policyInForce());
    return Response.ok(Pages.trial(frames.of(visit, HERE), screen)).build();
  }

  @POST
  @Path("trial")
  @Consumes(MediaType.APPLICATION_FORM_URLENCODED)
  public Response tried(
      @FormParam("ward") @Nullable String ward,
      @FormParam("month") @Nullable String month,
      @FormParam("policy") @Nullable String policy) {
    Visit visit = Visit.of(viewer);
    var asked = MonthAsked.of(ward, month, clock);
    if (!asked.mayBeSeenBy(visit)) {
      return answers.notYourWard(visit, HERE);
    }
    var frame = frames.of(visit, HERE);
    var when = asked.month().toString();
    var text = policy == null ? "" : policy;
    try {
      var trial = desk.trial(text, asked.question(visit));
      var screen =
          TrialScreen.of(
              asked.ward(), wardsOf(visit), when, text, trial, frame.now(), frame.zone());
      return Response.ok(Pages.trial(frame, screen)).build();
    } catch (IllegalArgumentException e) {
      var screen = TrialScreen.refused(asked.ward(), wardsOf(visit), when, text, e.getMessage());
      return Response.status(UNPROCESSABLE).entity(Pages.trial(frame, screen)).build();
    }
  }

  private List<String> wardsOf(Visit visit) {
    return wards.wards(visit.scope()).stream().map(WardLine::ward).toList();
  }
}
