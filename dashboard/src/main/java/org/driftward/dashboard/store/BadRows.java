package org.driftward.dashboard.store;

import jakarta.inject.Singleton;
import java.nio.charset.StandardCharsets;
import java.time.Duration;
import java.util.Map;
import java.util.concurrent.ConcurrentHashMap;
import org.driftward.dashboard.store.KnownRows.KnownRow;
import org.driftward.ground.failure.SetAside;
import org.driftward.ground.store.Quarantine;

/**
 * Sets rows of the read model aside that no page can show. Boards are read again and again, so the
 * same row is said again once a minute. Thread-safe.
 */
@Singleton
public class BadRows {

  private static final long A_MINUTE = Duration.ofMinutes(1).toNanos();
  private static final int MOST_REMEMBERED = 1_000;

  private final Quarantine quarantine;
  private final Map<String, Long> said = new ConcurrentHashMap<>();

  public BadRows(Quarantine quarantine) {
    this.quarantine = quarantine;
  }

  void keep(KnownRow row, Throwable why) {
    var place = row.place();
    if (mayBeSaid(place.encounter())) {
      quarantine.keep(
          SetAside.row(
              "dashboard.encounter",
              place.encounter(),
              "boards",
              place.encounter(),
              place.ward(),
              "A patient cannot be shown."),
          bytes(row),
          why);
    }
  }

  private boolean mayBeSaid(String encounter) {
    long now = System.nanoTime();
    if (said.size() > MOST_REMEMBERED) {
      said.clear();
    }
    return said.merge(encounter, now, (before, again) -> again - before > A_MINUTE ? again : before)
        == now;
  }

  private static byte[] bytes(KnownRow row) {
    return String.join(
            "\n",
            row.encounter(),
            String.valueOf(row.snapshot()),
            String.valueOf(row.plan()),
            String.valueOf(row.episode()))
        .getBytes(StandardCharsets.UTF_8);
  }
}
