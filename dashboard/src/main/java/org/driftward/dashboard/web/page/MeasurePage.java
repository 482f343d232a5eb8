package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.QueryParam;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import java.time.Clock;
import java.util.HashMap;
import org.driftward.alerts.contract.AuditDesk;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.contract.EventDesk;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.screen.EventsScreen;
import org.driftward.dashboard.screen.Wording;
import org.driftward.dashboard.screen.audit.MeasureScreen;
import org.driftward.dashboard.screen.audit.MeasureScreen.Known;
import org.driftward.dashboard.screen.audit.Trace;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/** From a measure to the episodes, stays and events that it rests on. */
@Path("/audit/measures/{measure}")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.MANAGER, AccountRole.ADMIN})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class MeasurePage {

  private static final String HERE = "/audit";
  private static final Known FORGOTTEN = new Known(null, null, null, "no longer known");

  private final Viewer viewer;
  private final AuditDesk desk;
  private final EpisodeDesk episodes;
  private final EventDesk events;
  private final WardReader wards;
  private final Frames frames;
  private final Answers answers;
  private final Clock clock;

  MeasurePage(
      Viewer viewer,
      AuditDesk desk,
      EpisodeDesk episodes,
      EventDesk events,
      WardReader wards,
      Frames frames,
      Answers answers,
      Clock clock) {
    this.viewer = viewer;
    this.desk = desk;
    this.episodes = episodes;
    this.events = events;
    this.wards = wards;
    this.frames = frames;
    this.answers = answers;
    this.clock = clock;
  }

  @GET
  public Response measure(
      @PathParam("measure") String id,
      @QueryParam("ward") @Nullable String ward,
      @QueryParam("month") @Nullable String month) {
    Visit visit = Visit.of(viewer);
    var asked = MonthAsked.of(ward, month, clock);
    if (!asked.mayBeSeenBy(visit)) {
      return answers.notYourWard(visit, HERE);
    }
    return desk.report(asked.question(visit)).measures().stream()
        .filter(measure -> measure.id().equals(id))
        .findFirst()
        .map(measure -> page(visit, asked, measure))
        .orElseGet(() -> answers.unknown(visit, HERE));
  }

  private Response page(Visit visit, MonthAsked asked, Measure measure) {
    var frame = frames.of(visit, HERE);
    // The same things stand under several figures.
    var looked = new HashMap<Trace, Known>();
    var screen =
        MeasureScreen.of(
            asked.ward(),
            asked.month().toString(),
            asked.query(),
            asked.callQuery(),
            measure,
            trace -> looked.computeIfAbsent(trace, this::known),
            frame.now(),
            frame.zone());
    return Response.ok(Pages.measure(frame, screen)).build();
  }

  private Known known(Trace trace) {
    return switch (trace.kind()) {
      case EPISODE -> episodes.find(trace.id()).map(MeasurePage::known).orElse(FORGOTTEN);
      case STAY -> wards.patient(trace.id()).map(view -> known(view.encounter())).orElse(FORGOTTEN);
      case EVENT ->
          trace.encounter() == null
              ? FORGOTTEN
              : events.of(trace.encounter()).stream()
                  .filter(event -> event.id().equals(trace.id()))
                  .findFirst()
                  .map(MeasurePage::known)
                  .orElse(new Known(null, null, null, "entered for the measures"));
    };
  }

  private static Known known(Episode episode) {
    var words = Wording.sentence(episode.level().word()) + " priority, " + episode.state().word();
    return new Known(episode.ward(), episode.bed(), episode.openedAt(), words);
  }

  private static Known known(Encounter encounter) {
    var words = encounter.discharged() == null ? "in the house" : "has left";
    return new Known(encounter.ward(), encounter.bed(), encounter.admitted(), words);
  }

  private static Known known(ClinicalEvent event) {
    return new Known(event.ward(), null, event.at(), EventsScreen.words(event.kind()));
  }
}
