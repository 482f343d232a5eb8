package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Comparator;
import java.util.List;
import org.driftward.dashboard.core.BedOrder;
import org.driftward.dashboard.core.UnscoredReader;
import org.driftward.ground.store.Database;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * {@link UnscoredReader} by SQL, whose cost follows the number of patients who are here: it looks
 * at the last few assessments of each. A corrected assessment whose first form was scored is not
 * found, as a snapshot does not say which revision it was made of.
 */
@ApplicationScoped
public class StoredUnscored implements UnscoredReader {

  private static final String UNSCORED =
      """
      SELECT e.encounter, e.ward, e.body->'stays'->-1->>'bed' AS bed
      FROM dashboard.encounter e
      WHERE e.present AND EXISTS (
        SELECT FROM (
          SELECT assessment FROM dashboard.assessment
          WHERE encounter = e.encounter AND came_at BETWEEN now() - :reach AND now() - :patience
          ORDER BY came_at DESC LIMIT 5) a
        WHERE NOT EXISTS (
          SELECT FROM dashboard.snapshot s
          WHERE s.encounter = e.encounter AND s.assessment = a.assessment))
      """;

  private static final Comparator<Unscored> BY_PLACE =
      Comparator.comparing(Unscored::ward)
          .thenComparing(Unscored::bed, Comparator.nullsLast(BedOrder.INSTANCE));

  private final Database database;

  public StoredUnscored(Database database) {
    this.database = database;
  }

  @Override
  public List<Unscored> unscored() {
    return database.read(
        handle ->
            handle
                .createQuery(UNSCORED)
                .bind("reach", REACH)
                .bind("patience", PATIENCE)
                .map(StoredUnscored::map)
                .stream()
                .sorted(BY_PLACE)
                .toList());
  }

  private static Unscored map(ResultSet row, StatementContext context) throws SQLException {
    return new Unscored(row.getString("encounter"), row.getString("ward"), row.getString("bed"));
  }
}
