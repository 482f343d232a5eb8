package org.driftward.dashboard.web.page;

import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.core.MediaType;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.time.Clock;
import java.time.Duration;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.driftward.dashboard.core.WardNews;
import org.jspecify.annotations.Nullable;

/**
 * A page's own stream of server-sent events. It reads again when the wards tell of a change, and
 * every few seconds because time alone makes a set overdue; what has changed is sent as ready HTML,
 * and every reading is followed by a {@code beat} with the ward's time in milliseconds, by which
 * the page knows that the line is alive.
 */
@ApplicationScoped
class LiveStream {

  private static final Duration BEAT = Duration.ofSeconds(5);

  /** A stream ends after this time and is asked for again, so that a lost session is noticed. */
  private static final Duration LIFE = Duration.ofMinutes(10);

  private static final long RECONNECT_MILLIS = 300;

  private final WardNews news;
  private final Clock clock;

  LiveStream(WardNews news, Clock clock) {
    this.news = news;
    this.clock = clock;
  }

  /** One event: its name and its text. */
  record Part(String name, String text) {}

  /**
   * @param wards whose changes make it read again
   * @param read blocking; what to show now
   * @param tell what to send, given what was read before (null at first) and now; empty where a
   *     person would see no difference
   */
  <T> Multi<OutboundSseEvent> of(
      Sse sse,
      Collection<String> wards,
      Supplier<T> read,
      BiFunction<@Nullable T, T, List<Part>> tell) {
    var before = new AtomicReference<@Nullable T>();
    return Multi.createBy()
        .merging()
        .streams(Multi.createFrom().ticks().every(BEAT), changes(wards))
        .onOverflow()
        .dropPreviousItems()
        .emitOn(Infrastructure.getDefaultWorkerPool(), 1)
        .onItem()
        .transformToIterable(
            tick -> {
              T now = read.get();
              return events(sse, tell.apply(before.getAndSet(now), now));
            })
        .select()
        .first(LIFE);
  }

  private Multi<Long> changes(Collection<String> wards) {
    return Multi.createFrom()
        .emitter(
            emitter -> {
              var listening =
                  wards.stream().map(ward -> news.listen(ward, () -> emitter.emit(0L))).toList();
              emitter.onTermination(() -> listening.forEach(WardNews.Listening::close));
            });
  }

  private List<OutboundSseEvent> events(Sse sse, List<Part> parts) {
    var beat =
        sse.newEventBuilder()
            .name("beat")
            .reconnectDelay(RECONNECT_MILLIS)
            .data(Long.toString(clock.millis()))
            .build();
    var events = new ArrayList<OutboundSseEvent>();
    for (Part part : parts) {
      events.add(
          sse.newEventBuilder()
              .name(part.name())
              .mediaType(MediaType.TEXT_PLAIN_TYPE)
              .data(part.text())
              .build());
    }
    events.add(beat);
    return events;
  }
}
