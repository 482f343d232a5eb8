package org.driftward.dashboard.stream;

import java.time.Duration;
import java.util.Set;
import java.util.concurrent.ConcurrentHashMap;
import java.util.concurrent.RejectedExecutionException;
import java.util.concurrent.ScheduledExecutorService;
import java.util.concurrent.ScheduledFuture;
import java.util.concurrent.TimeUnit;
import java.util.concurrent.atomic.AtomicBoolean;
import java.util.function.Consumer;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.WardNews;
import org.driftward.dashboard.core.WardReader;
import org.driftward.ground.part.Supervisor;
import org.jboss.logging.Logger;
import org.jspecify.annotations.Nullable;

/**
 * One ward's board for all who watch it in this process. News within a pause is joined; between
 * news it looks again by itself, since what is overdue changes by time alone.
 */
final class BoardFeed {

  private static final Logger LOG = Logger.getLogger(BoardFeed.class);

  private final String ward;
  private final WardReader reader;
  private final ScheduledExecutorService scheduler;
  private final long pauseMillis;
  private final WardNews.Listening listening;
  private final ScheduledFuture<?> ticking;
  private final Set<Consumer<Board>> listeners = ConcurrentHashMap.newKeySet();
  private final AtomicBoolean waiting = new AtomicBoolean();
  private final Object reading = new Object();
  private volatile long readAt;
  private volatile @Nullable ScheduledFuture<?> next;
  private volatile @Nullable Board last;

  /** The first reading since which every one has failed; null if the last one did not. */
  private volatile @Nullable Long failingSince;

  BoardFeed(
      String ward,
      WardReader reader,
      WardNews news,
      DashboardConfig.Live settings,
      ScheduledExecutorService scheduler) {
    this.ward = ward;
    this.reader = reader;
    this.scheduler = scheduler;
    this.pauseMillis = settings.pause().toMillis();
    this.readAt = System.nanoTime() - settings.pause().toNanos();
    this.listening = news.listen(ward, this::changed);
    long refresh = settings.refresh().toMillis();
    this.ticking =
        scheduler.scheduleWithFixedDelay(this::changed, refresh, refresh, TimeUnit.MILLISECONDS);
  }

  void add(Consumer<Board> listener) {
    listeners.add(listener);
  }

  /** A newcomer gets the last board at once, and the next reading as everybody does. */
  void greet(Consumer<Board> listener) {
    var known = last;
    if (known != null) {
      listener.accept(known);
    }
    changed();
  }

  /**
   * @return whether nobody is left; the feed is over then
   */
  boolean remove(Consumer<Board> listener) {
    listeners.remove(listener);
    if (!listeners.isEmpty()) {
      return false;
    }
    listening.close();
    ticking.cancel(false);
    var planned = next;
    if (planned != null) {
      planned.cancel(false);
    }
    return true;
  }

  private void changed() {
    if (waiting.compareAndSet(false, true)) {
      long since = TimeUnit.NANOSECONDS.toMillis(System.nanoTime() - readAt);
      try {
        next =
            scheduler.schedule(this::read, Math.max(0, pauseMillis - since), TimeUnit.MILLISECONDS);
      } catch (RejectedExecutionException e) {
        LOG.debug("The process stops");
      }
    }
  }

  private void read() {
    synchronized (reading) {
      // News from here on asks for another reading.
      waiting.set(false);
      readAt = System.nanoTime();
      try {
        var board = reader.board(ward);
        var before = last;
        last = board;
        failingSince = null;
        if (before == null || !board.shows(before)) {
          listeners.forEach(listener -> listener.accept(board));
        }
      } catch (Throwable e) {
        if (failingSince == null) {
          failingSince = System.nanoTime();
        }
        Supervisor.OF_THE_PROCESS.failed("live-boards", e);
      }
    }
  }

  /** For how long the board could not be read; null if the last reading went well. */
  @Nullable Duration unread() {
    var since = failingSince;
    return since == null ? null : Duration.ofNanos(System.nanoTime() - since);
  }
}
