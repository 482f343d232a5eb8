package org.driftward.dashboard.web.page;

import io.quarkus.security.Authenticated;
import io.smallrye.common.annotation.Blocking;
import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.ws.rs.ForbiddenException;
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
import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.concurrent.atomic.AtomicReference;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.screen.BoardScreen;
import org.driftward.dashboard.screen.Frame;
import org.driftward.dashboard.screen.News;
import org.driftward.dashboard.screen.StartPage;
import org.driftward.dashboard.screen.WardsScreen;
import org.driftward.dashboard.web.LiveSession;
import org.driftward.dashboard.web.Viewer;
import org.driftward.dashboard.web.page.Events.Part;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/** The boards, and the list of the wards that have one. */
@Path("/wards")
@ServedBy(Role.DASHBOARD)
@Page
@Authenticated
@Blocking
@Produces(MediaType.TEXT_HTML)
public class BoardPage {

  private final Viewer viewer;
  private final WardReader wards;
  private final Frames frames;
  private final Answers answers;
  private final LiveSession session;
  private final Events events;
  private final Tellings tellings;
  private final Clock clock;

  BoardPage(
      Viewer viewer,
      WardReader wards,
      Frames frames,
      Answers answers,
      LiveSession session,
      Events events,
      Tellings tellings,
      Clock clock) {
    this.viewer = viewer;
    this.wards = wards;
    this.frames = frames;
    this.answers = answers;
    this.session = session;
    this.events = events;
    this.tellings = tellings;
    this.clock = clock;
  }

  @GET
  public Response list() {
    Visit visit = Visit.of(viewer);
    var screen = WardsScreen.of(wards.wards(visit.scope()));
    return Response.ok(Pages.wards(frames.of(visit, "/wards"), screen)).build();
  }

  @GET
  @Path("{ward}")
  public Response board(@PathParam("ward") String ward) {
    Visit visit = Visit.of(viewer);
    String here = StartPage.board(ward);
    if (!visit.sees(ward)) {
      return answers.notYourWard(visit, here);
    }
    Board board = wards.board(ward);
    Frame frame = frames.of(visit, here).at(board.asOf());
    return Response.ok(Pages.board(frame, screen(visit, board), tellings.of(Set.of(ward)))).build();
  }

  @GET
  @Path("{ward}/live")
  @Produces(MediaType.SERVER_SENT_EVENTS)
  public Multi<OutboundSseEvent> live(@PathParam("ward") String ward, @Context Sse sse) {
    Visit visit = Visit.of(viewer);
    if (!visit.sees(ward)) {
      throw new ForbiddenException();
    }
    Frame frame = frames.of(visit, StartPage.board(ward));
    var before = new AtomicReference<@Nullable Board>();
    var warnings = tellings.warnings(Set.of(ward));
    return session
        .open(ward, visit.account())
        .emitOn(Infrastructure.getDefaultWorkerPool())
        .map(now -> now.map(board -> parts(visit, frame, before.getAndSet(board), board)))
        .onItem()
        .transformToIterable(
            parts -> events.of(sse, warnings.with(parts.orElse(List.of()), session.unread(ward))));
  }

  private List<Part> parts(Visit visit, Frame frame, @Nullable Board before, Board now) {
    var parts = new ArrayList<Part>();
    var screen = screen(visit, now);
    parts.add(new Part("board", Pages.boardBody(frame.at(now.asOf()), screen).render()));
    parts.add(new Part("words", Escape.html(screen.inWords())));
    parts.add(tellings.part(Set.of(now.ward())));
    if (before != null) {
      News.between(before, now).ifPresent(words -> parts.add(new Part("news", Escape.html(words))));
    }
    return parts;
  }

  private BoardScreen screen(Visit visit, Board board) {
    return BoardScreen.of(board, visit.reader(), clock.getZone());
  }
}
