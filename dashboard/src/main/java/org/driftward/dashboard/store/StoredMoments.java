package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import org.driftward.dashboard.core.Moment;
import org.driftward.dashboard.core.MomentReader;
import org.driftward.ground.store.Database;
import org.jspecify.annotations.Nullable;

/** {@link MomentReader} by SQL, along the index of an encounter's history. */
@ApplicationScoped
public class StoredMoments implements MomentReader {

  private static final String SELECT =
      """
      SELECT a.counts_in AS encounter, a.body AS assessment, s.body AS snapshot
      FROM (%s) a
      LEFT JOIN dashboard.snapshot s
        ON s.encounter = a.counts_in AND s.assessment = a.assessment AND NOT s.withdrawn
      """;

  private static final String NAMED =
      """
      SELECT dashboard.survivor(encounter) AS counts_in, assessment, body
      FROM dashboard.assessment WHERE md5(encounter || chr(10) || assessment) = :moment
      """;

  private final Database database;

  public StoredMoments(Database database) {
    this.database = database;
  }

  @Override
  public List<Moment> read(
      String encounter, Instant from, Instant to, @Nullable Mark start, int limit) {
    var onwards = start == null ? "" : " AND (taken_at, assessment) <= (:at, :id)";
    var wanted = OneStay.assessments("taken_at >= :from AND taken_at < :to" + onwards);
    return database.read(
        handle -> {
          var query =
              handle.createQuery(
                  SELECT.formatted(wanted)
                      + " ORDER BY a.taken_at DESC, a.assessment DESC LIMIT :limit");
          query.bind("encounter", encounter).bind("from", from).bind("to", to).bind("limit", limit);
          if (start != null) {
            query.bind("at", start.takenAt()).bind("id", start.assessment());
          }
          return query.map((row, context) -> moment(row)).list();
        });
  }

  @Override
  public Optional<Moment> named(String moment) {
    return database.read(
        handle ->
            handle
                .createQuery(SELECT.formatted(NAMED))
                .bind("moment", moment)
                .map((row, context) -> moment(row))
                .findFirst());
  }

  private static Moment moment(ResultSet row) throws SQLException {
    var assessment = Tables.parse(Tables.ASSESSMENT_JSON, row.getString("assessment"));
    var snapshot = row.getString("snapshot");
    return new Moment(
        row.getString("encounter"),
        assessment,
        snapshot == null || assessment.retracted()
            ? null
            : Tables.parse(Tables.SNAPSHOT_JSON, snapshot));
  }
}
