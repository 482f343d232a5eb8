package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Instant;
import java.util.List;
import org.driftward.dashboard.core.Feed;
import org.driftward.dashboard.core.FeedReader;
import org.driftward.ground.store.Database;

/** {@link FeedReader} by SQL over the read model. */
@ApplicationScoped
public class StoredFeeds implements FeedReader {

  private final Database database;

  public StoredFeeds(Database database) {
    this.database = database;
  }

  @Override
  public List<Feed> feeds(String ward, Instant since) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT a.body->>'source' AS source,
                           max((a.body->>'recordedAt')::timestamptz) AS last
                    FROM dashboard.encounter e
                    JOIN dashboard.assessment a
                      ON a.encounter = e.encounter AND a.taken_at >= :since
                    WHERE e.present AND e.ward = :ward
                    GROUP BY 1 ORDER BY 1
                    """)
                .bind("ward", ward)
                .bind("since", since)
                .map(
                    (row, context) ->
                        new Feed(row.getString("source"), row.getTimestamp("last").toInstant()))
                .list());
  }
}
