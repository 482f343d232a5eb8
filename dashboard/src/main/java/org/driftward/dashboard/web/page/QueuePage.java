package org.driftward.dashboard.web.page;

import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Multi;
import jakarta.annotation.security.RolesAllowed;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.core.Response;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.driftward.dashboard.core.Card;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.core.WardReader.WardLine;
import org.driftward.dashboard.screen.Frame;
import org.driftward.dashboard.screen.QueueScreen;
import org.driftward.dashboard.security.WardSight;
import org.driftward.dashboard.web.Viewer;
import org.driftward.dashboard.web.page.Events.Part;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/** The running episodes of every ward that the person sees, in one queue. */
@Path("/response")
@ServedBy(Role.DASHBOARD)
@Page
@RolesAllowed({AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE})
@Blocking
@Produces(MediaType.TEXT_HTML)
public class QueuePage {

  private static final String HERE = "/response";

  private final Viewer viewer;
  private final WardReader wards;
  private final Frames frames;
  private final LiveStream streams;
  private final WardSight sight;
  private final Tellings tellings;
  private final Clock clock;

  QueuePage(
      Viewer viewer,
      WardReader wards,
      Frames frames,
      LiveStream streams,
      WardSight sight,
      Tellings tellings,
      Clock clock) {
    this.viewer = viewer;
    this.wards = wards;
    this.frames = frames;
    this.streams = streams;
    this.sight = sight;
    this.tellings = tellings;
    this.clock = clock;
  }

  @GET
  public Response queue() {
    Visit visit = Visit.of(viewer);
    Frame frame = frames.of(visit, HERE);
    var screen = screen(visit, wards.responseQueue(visit.scope()), frame.now());
    return Response.ok(Pages.queue(frame, screen, tellings.of(visit.wards()))).build();
  }

  @GET
  @Path("live")
  @Produces(MediaType.SERVER_SENT_EVENTS)
  public Multi<OutboundSseEvent> live(@Context Sse sse) {
    Visit visit = Visit.of(viewer);
    Frame frame = frames.of(visit, HERE);
    var seen = wards.wards(visit.scope()).stream().map(WardLine::ward).toList();
    var warnings = tellings.warnings(visit.wards());
    return streams.of(
        sse,
        seen,
        () -> Optional.of(wards.responseQueue(sight.of(visit.account()))),
        (before, now) -> warnings.with(parts(visit, frame, before, now)));
  }

  private List<Part> parts(
      Visit visit, Frame frame, @Nullable List<Card> before, List<Card> cards) {
    if (cards.equals(before)) {
      return List.of();
    }
    Instant now = clock.instant();
    var screen = screen(visit, cards, now);
    return List.of(
        new Part("queue", Pages.queueBody(frame.at(now), screen).render()),
        new Part("words", Escape.html(screen.inWords())),
        tellings.part(visit.wards()));
  }

  private QueueScreen screen(Visit visit, List<Card> cards, Instant now) {
    return QueueScreen.of(cards, visit.reader(), now, clock.getZone());
  }
}
