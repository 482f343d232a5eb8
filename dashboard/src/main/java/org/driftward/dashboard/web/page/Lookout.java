package org.driftward.dashboard.web.page;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Duration;
import java.util.List;
import org.driftward.alerts.contract.WatchDesk;
import org.driftward.alerts.contract.WatchDesk.Watch;
import org.driftward.dashboard.core.SetAsideReader;
import org.driftward.dashboard.core.SetAsideReader.Missing;
import org.driftward.dashboard.core.UnscoredReader;
import org.driftward.dashboard.core.UnscoredReader.Unscored;
import org.driftward.dashboard.stream.ReadModelPart;
import org.jspecify.annotations.Nullable;

/**
 * Whether what stands behind the pages works: alarms, scoring, and the reading of news. Asked by
 * every open page again and again, so one look serves them all for a moment. Thread-safe, blocking.
 */
@ApplicationScoped
class Lookout {

  private static final Duration A_MOMENT = Duration.ofSeconds(2);

  /** What mends itself within this time is not worth a word. */
  private static final Duration PATIENCE = Duration.ofSeconds(15);

  private final WatchDesk watch;
  private final UnscoredReader unscored;
  private final SetAsideReader setAside;
  private final ReadModelPart news;
  private @Nullable Seen seen;
  private long seenAt;

  /** The first look since which every look found that nothing is read; null if the last did not. */
  private @Nullable Long deafSince;

  Lookout(WatchDesk watch, UnscoredReader unscored, SetAsideReader setAside, ReadModelPart news) {
    this.watch = watch;
    this.unscored = unscored;
    this.setAside = setAside;
    this.news = news;
  }

  /**
   * @param unscored of the whole hospital
   * @param missing of the whole hospital
   * @param deaf how long this process has read nothing that is new; null while it reads
   */
  record Seen(
      Watch watch, List<Unscored> unscored, List<Missing> missing, @Nullable Duration deaf) {}

  synchronized Seen now() {
    long now = System.nanoTime();
    if (seen == null || now - seenAt > A_MOMENT.toNanos()) {
      seen = new Seen(watch.now(), unscored.unscored(), setAside.missing(), deaf(now));
      seenAt = now;
    }
    return seen;
  }

  private @Nullable Duration deaf(long now) {
    if (news.condition().well()) {
      deafSince = null;
      return null;
    }
    if (deafSince == null) {
      deafSince = now;
    }
    var silence = Duration.ofNanos(now - deafSince);
    return silence.compareTo(PATIENCE) < 0 ? null : silence;
  }
}
