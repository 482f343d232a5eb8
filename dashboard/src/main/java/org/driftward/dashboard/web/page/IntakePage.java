package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Multi;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.BeanParam;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.driftward.dashboard.screen.Findings;
import org.driftward.dashboard.screen.Frame;
import org.driftward.dashboard.screen.IntakeScreen;
import org.driftward.dashboard.screen.RefusalScreen;
import org.driftward.dashboard.screen.codes.CodesScreen;
import org.driftward.dashboard.security.WardSight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.dashboard.web.page.Events.Part;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.CodeDesk;
import org.driftward.ingest.contract.FileImport;
import org.driftward.ingest.contract.IntakeDesk;
import org.driftward.ingest.contract.IntakeDesk.Feed;
import org.driftward.ingest.contract.IntakeDesk.Filter;
import org.driftward.ingest.contract.IntakeDesk.RefusalPage;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/** What comes in, what was refused and why. */
@Path("/intake")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.INTEGRATION, AccountRole.ADMIN})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class IntakePage {

  private static final String HERE = "/intake";

  private final Viewer viewer;
  private final IntakeDesk desk;
  private final CodeDesk codes;
  private final Catalogue catalogue;
  private final Frames frames;
  private final Answers answers;
  private final LiveStream streams;
  private final WardSight sight;
  private final Clock clock;

  IntakePage(
      Viewer viewer,
      IntakeDesk desk,
      CodeDesk codes,
      Catalogue catalogue,
      Frames frames,
      Answers answers,
      LiveStream streams,
      WardSight sight,
      Clock clock) {
    this.viewer = viewer;
    this.desk = desk;
    this.codes = codes;
    this.catalogue = catalogue;
    this.frames = frames;
    this.answers = answers;
    this.streams = streams;
    this.sight = sight;
    this.clock = clock;
  }

  @GET
  public Response intake(@BeanParam RefusalQuery query) {
    Visit visit = Visit.of(viewer);
    Frame frame = frames.of(visit, HERE);
    var filter = query.filter(frame.zone());
    var sees = new Sight(visit.account(), visit.scope());
    var screen =
        IntakeScreen.of(
            desk.feeds(),
            desk.imports(sees),
            desk.refusals(filter, sees),
            filter,
            frame.now(),
            frame.zone());
    var unmapped =
        CodesScreen.of(codes.unmapped(sees), codes.mapped(sees), new Findings(catalogue));
    return Response.ok(IntakePages.intake(frame, screen, unmapped)).build();
  }

  @GET
  @Path("refusals/{id}")
  public Response refusal(@PathParam("id") String id) {
    Visit visit = Visit.of(viewer);
    return desk.refusal(id, new Sight(visit.account(), visit.scope()))
        .map(RefusalScreen::of)
        .map(screen -> IntakePages.refusal(frames.of(visit, HERE), screen))
        .map(page -> Response.ok(page).build())
        .orElseGet(() -> answers.unknown(visit, HERE));
  }

  /** What the stream watches. */
  private record Now(List<Feed> feeds, List<FileImport> files) {}

  @GET
  @Path("live")
  @Produces(MediaType.SERVER_SENT_EVENTS)
  public Multi<OutboundSseEvent> live(@Context Sse sse) {
    Visit visit = Visit.of(viewer);
    Frame frame = frames.of(visit, HERE);
    return streams.of(
        sse,
        List.of(),
        () -> Optional.of(now(visit.account())),
        (before, now) -> parts(frame, before, now));
  }

  private Now now(String account) {
    return new Now(desk.feeds(), desk.imports(new Sight(account, sight.of(account))));
  }

  private List<Part> parts(Frame frame, @Nullable Now before, Now now) {
    Instant time = clock.instant();
    var at = frame.at(time);
    var nothing = new RefusalPage(List.of(), null, List.of());
    var screen =
        IntakeScreen.of(now.feeds(), now.files(), nothing, Filter.OPEN, time, frame.zone());
    var parts = new ArrayList<Part>();
    if (before == null || !before.feeds().equals(now.feeds())) {
      parts.add(new Part("feeds", IntakePages.intakeFeeds(at, screen).render()));
    }
    if (before == null || !before.files().equals(now.files())) {
      parts.add(new Part("files", IntakePages.intakeFiles(at, screen).render()));
    }
    return parts;
  }
}
