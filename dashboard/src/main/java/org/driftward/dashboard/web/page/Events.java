package org.driftward.dashboard.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.time.Clock;
import java.util.ArrayList;
import java.util.List;

/**
 * What a page is sent over its stream: parts of itself as ready HTML, and after each reading a
 * {@code beat} with the ward's time in milliseconds, by which the page knows that the line is
 * alive.
 */
@ApplicationScoped
class Events {

  /** A line that was cut is asked for again before a person would notice. */
  private static final long RECONNECT_MILLIS = 300;

  private final Clock clock;

  Events(Clock clock) {
    this.clock = clock;
  }

  /** One event: its name and its HTML. */
  record Part(String name, String html) {}

  List<OutboundSseEvent> of(Sse sse, List<Part> parts) {
    var events = new ArrayList<OutboundSseEvent>();
    for (Part part : parts) {
      events.add(
          sse.newEventBuilder()
              .name(part.name())
              .mediaType(MediaType.TEXT_PLAIN_TYPE)
              .data(String.class, part.html())
              .build());
    }
    events.add(
        sse.newEventBuilder()
            .name("beat")
            .reconnectDelay(RECONNECT_MILLIS)
            .data(String.class, Long.toString(clock.millis()))
            .build());
    return events;
  }
}
