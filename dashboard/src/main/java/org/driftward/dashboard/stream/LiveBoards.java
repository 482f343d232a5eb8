package org.driftward.dashboard.stream;

import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.subscription.BackPressureStrategy;
import jakarta.annotation.PreDestroy;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.Executors;
import java.util.concurrent.ScheduledExecutorService;
import java.util.function.Consumer;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.WardNews;
import org.driftward.dashboard.core.WardReader;
import org.jspecify.annotations.Nullable;

/**
 * The board of a ward as a stream. However many watch a ward, it is read once for each change, and
 * not more often than the pause of the settings allows. Thread-safe.
 */
@ApplicationScoped
public class LiveBoards {

  private static final int THREADS = 2;

  private final WardReader reader;
  private final WardNews news;
  private final DashboardConfig.Live settings;
  private final ScheduledExecutorService scheduler =
      Executors.newScheduledThreadPool(
          THREADS,
          work -> {
            var thread = new Thread(work, "driftward-live-boards");
            thread.setDaemon(true);
            return thread;
          });
  private final Map<String, BoardFeed> feeds = new ConcurrentHashMap<>();

  public LiveBoards(WardReader reader, WardNews news, DashboardConfig config) {
    this.reader = reader;
    this.news = news;
    this.settings = config.live();
  }

  /**
   * The board now, and again whenever a person would see a difference, until cancelled. One who is
   * slow gets the newest and not the ones between.
   */
  public Multi<Board> of(String ward) {
    return Multi.createFrom()
        .emitter(
            emitter -> {
              var leave = join(ward, emitter::emit);
              emitter.onTermination(leave);
            },
            BackPressureStrategy.LATEST);
  }

  /** Adds a listener to the ward's feed; the last one to leave ends it. */
  private Runnable join(String ward, Consumer<Board> listener) {
    var feed =
        feeds.compute(
            ward,
            (key, present) -> {
              var joined =
                  present == null
                      ? new BoardFeed(ward, reader, news, settings, scheduler)
                      : present;
              joined.add(listener);
              return joined;
            });
    // Outside of the map's lock: what listens may leave again at once.
    feed.greet(listener);
    return () ->
        feeds.computeIfPresent(ward, (key, present) -> feed.remove(listener) ? null : present);
  }

  /** For how long the ward's board could not be read; null where it can, or nobody watches it. */
  public @Nullable Duration unread(String ward) {
    var feed = feeds.get(ward);
    return feed == null ? null : feed.unread();
  }

  @PreDestroy
  void stop() {
    scheduler.shutdownNow();
  }
}
