package org.driftward.dashboard.web.page;

import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.enterprise.context.ApplicationScoped;
import jakarta.ws.rs.sse.OutboundSseEvent;
import jakarta.ws.rs.sse.Sse;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.BiFunction;
import java.util.function.Supplier;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.core.WardNews;
import org.driftward.dashboard.stream.BoardMetrics;
import org.driftward.dashboard.web.page.Events.Part;
import org.jspecify.annotations.Nullable;

/**
 * A page's own stream. It reads again when the wards tell of a change, and with every heartbeat
 * because time alone makes a set overdue. (A board is not read for each page: see {@code
 * LiveSession}.)
 */
@ApplicationScoped
class LiveStream {

  private final WardNews news;
  private final Events events;
  private final BoardMetrics metrics;
  private final DashboardConfig.Live settings;

  LiveStream(WardNews news, Events events, BoardMetrics metrics, DashboardConfig config) {
    this.news = news;
    this.events = events;
    this.metrics = metrics;
    this.settings = config.live();
  }

  /**
   * @param wards whose changes make it read again
   * @param read blocking; what to show now, or empty once the person may no longer see it, which
   *     ends the stream
   * @param tell what to send, given what was read before (null at first) and now; empty where a
   *     person would see no difference
   */
  <T> Multi<OutboundSseEvent> of(
      Sse sse,
      Collection<String> wards,
      Supplier<Optional<T>> read,
      BiFunction<@Nullable T, T, List<Part>> tell) {
    var before = new AtomicReference<@Nullable T>();
    return Multi.createBy()
        .merging()
        .streams(Multi.createFrom().ticks().every(settings.heartbeat()), changes(wards))
        .onOverflow()
        .dropPreviousItems()
        .emitOn(Infrastructure.getDefaultWorkerPool(), 1)
        .map(tick -> read.get())
        .select()
        .first(Optional::isPresent)
        .map(Optional::orElseThrow)
        .onItem()
        .transformToIterable(now -> events.of(sse, tell.apply(before.getAndSet(now), now)))
        .select()
        .first(settings.lifetime())
        .onSubscription()
        .invoke(metrics::clientCame)
        .onTermination()
        .invoke(metrics::clientLeft);
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
}
