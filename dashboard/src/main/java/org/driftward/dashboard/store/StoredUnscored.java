package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.List;
import javax.sql.DataSource;
import org.driftward.dashboard.core.UnscoredReader;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.core.statement.StatementContext;
import org.jdbi.v3.postgres.PostgresPlugin;

/**
 * {@link UnscoredReader} by SQL. A corrected assessment whose first form was scored is not found,
 * as a snapshot does not say which revision it was made of.
 */
@ApplicationScoped
public class StoredUnscored implements UnscoredReader {

  private static final String UNSCORED =
      """
      SELECT e.body AS encounter, count(*) AS assessments,
        (1000 * EXTRACT(EPOCH FROM clock_timestamp() - min(a.came_at)))::bigint AS waited
      FROM dashboard.assessment a JOIN dashboard.encounter e ON e.encounter = a.encounter
      WHERE e.present
        AND a.came_at BETWEEN clock_timestamp() - :reach AND clock_timestamp() - :patience
        AND NOT EXISTS (
          SELECT FROM dashboard.snapshot s
          WHERE s.encounter = a.encounter AND s.assessment = a.assessment)
      GROUP BY e.encounter, e.body
      ORDER BY min(a.came_at), e.encounter
      """;

  private final Jdbi jdbi;

  public StoredUnscored(DataSource dataSource) {
    this.jdbi = Jdbi.create(dataSource).installPlugin(new PostgresPlugin());
  }

  @Override
  public List<Unscored> unscored() {
    return jdbi.withHandle(
        handle ->
            handle
                .createQuery(UNSCORED)
                .bind("reach", REACH)
                .bind("patience", PATIENCE)
                .map(StoredUnscored::map)
                .list());
  }

  private static Unscored map(ResultSet row, StatementContext context) throws SQLException {
    var encounter = Tables.parse(Tables.ENCOUNTER_JSON, row.getString("encounter"));
    return new Unscored(
        encounter.id(),
        encounter.ward(),
        encounter.bed(),
        row.getInt("assessments"),
        Duration.ofMillis(row.getLong("waited")));
  }
}
