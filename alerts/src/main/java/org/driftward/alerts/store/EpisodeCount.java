package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.EnumMap;
import java.util.Map;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Word;

/** How many running episodes stand where. */
@Singleton
public class EpisodeCount {

  private final Database database;

  public EpisodeCount(Database database) {
    this.database = database;
  }

  /** Every state but closed, those that are empty included. */
  public Map<EpisodeState, Long> byState() {
    var counts = new EnumMap<EpisodeState, Long>(EpisodeState.class);
    for (var state : EpisodeState.values()) {
      if (state != EpisodeState.CLOSED) {
        counts.put(state, 0L);
      }
    }
    database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT state, count(*) AS n FROM alerts.episode"
                        + " WHERE state <> 'closed' GROUP BY state")
                .reduceRows(
                    counts,
                    (all, row) -> {
                      var word = row.getColumn("state", String.class);
                      var state = Word.parse(EpisodeState.class, word);
                      all.put(state, row.getColumn("n", Long.class));
                      return all;
                    }));
    return counts;
  }
}
