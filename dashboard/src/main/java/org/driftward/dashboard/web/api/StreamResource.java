package org.driftward.dashboard.web.api;

import io.quarkus.security.Authenticated;
import io.smallrye.mutiny.Multi;
import jakarta.ws.rs.GET;
import jakarta.ws.rs.Path;
import jakarta.ws.rs.PathParam;
import jakarta.ws.rs.Produces;
import jakarta.ws.rs.WebApplicationException;
import jakarta.ws.rs.core.Context;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Optional;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.web.LiveSession;
import org.driftward.dashboard.web.Viewer;
import org.driftward.ingest.contract.Role;
import org.driftward.ingest.contract.ServedBy;
import org.jspecify.annotations.Nullable;

/** The board of a ward, live: server-sent events, for programs and for our own pages. */
@Path("/api/wards")
@ServedBy(Role.DASHBOARD)
@Authenticated
public class StreamResource {

  private final LiveSession session;
  private final Viewer viewer;

  public StreamResource(LiveSession session, Viewer viewer) {
    this.session = session;
    this.viewer = viewer;
  }

  /**
   * An event {@code board} with the whole board as {@code GET /api/wards/{ward}/board} answers it,
   * at once and then whenever it changes. Between, a comment line as a sign of life, or an event
   * {@code unread} with the seconds for which the board could not be read: what was sent last may
   * be old.
   */
  @GET
  @Path("/{ward}/stream")
  @Produces(MediaType.SERVER_SENT_EVENTS)
  public Multi<OutboundSseEvent> stream(@PathParam("ward") String ward, @Context Sse sse) {
    if (!viewer.sees(ward)) {
      throw new WebApplicationException(Answers.otherWard());
    }
    return session
        .open(ward, viewer.account())
        .map(board -> event(board, session.unread(ward), sse));
  }

  private static OutboundSseEvent event(Optional<Board> board, @Nullable Duration unread, Sse sse) {
    return board
        .map(news -> new String(BoardJson.write(news), StandardCharsets.UTF_8))
        .map(json -> sse.newEventBuilder().name("board").data(String.class, json).build())
        .orElseGet(() -> beat(unread, sse));
  }

  private static OutboundSseEvent beat(@Nullable Duration unread, Sse sse) {
    return unread == null
        ? sse.newEventBuilder().comment("alive").build()
        : sse.newEventBuilder()
            .name("unread")
            .data(String.class, "{\"seconds\":" + unread.toSeconds() + "}")
            .build();
  }
}
