package org.driftward.dashboard.web;

import io.smallrye.mutiny.Multi;
import io.smallrye.mutiny.infrastructure.Infrastructure;
import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.Optional;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.security.WardSight;
import org.driftward.dashboard.stream.BoardMetrics;
import org.driftward.dashboard.stream.LiveBoards;
import org.jspecify.annotations.Nullable;

/**
 * One browser's live view of a ward: the board whenever it changes and a heartbeat between, until
 * the account no longer sees the ward, the lifetime of the settings is over, or nobody reads it any
 * more. A browser that is cut off comes back by itself and is asked again who it is.
 */
@ApplicationScoped
public class LiveSession {

  private static final class NoLongerSeen extends RuntimeException {
    private static final long serialVersionUID = 1L;

    NoLongerSeen() {
      super("the account no longer sees the ward");
    }
  }

  private final LiveBoards boards;
  private final WardSight sight;
  private final BoardMetrics metrics;
  private final DashboardConfig.Live settings;

  public LiveSession(
      LiveBoards boards, WardSight sight, BoardMetrics metrics, DashboardConfig config) {
    this.boards = boards;
    this.sight = sight;
    this.metrics = metrics;
    this.settings = config.live();
  }

  /** For how long the ward's board could not be read; null where it can. */
  public @Nullable Duration unread(String ward) {
    return boards.unread(ward);
  }

  /**
   * @param account whose sight of the ward is asked again with every heartbeat
   * @return the board, or empty for a heartbeat
   */
  public Multi<Optional<Board>> open(String ward, String account) {
    var news = boards.of(ward).map(Optional::of);
    var heartbeats =
        Multi.createFrom()
            .ticks()
            .every(settings.heartbeat())
            .onOverflow()
            .drop()
            .emitOn(Infrastructure.getDefaultWorkerPool())
            .map(
                tick -> {
                  if (!sight.stillSees(account, ward)) {
                    throw new NoLongerSeen();
                  }
                  return Optional.<Board>empty();
                });
    return Multi.createBy()
        .merging()
        .streams(news, heartbeats)
        .onFailure(NoLongerSeen.class)
        .recoverWithCompletion()
        .select()
        .first(settings.lifetime())
        .onSubscription()
        .invoke(metrics::clientCame)
        .onTermination()
        .invoke(metrics::clientLeft);
  }
}
