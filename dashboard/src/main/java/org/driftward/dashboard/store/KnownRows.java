package org.driftward.dashboard.store;

import java.math.BigDecimal;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.List;
import org.driftward.dashboard.core.Cards.Known;
import org.driftward.dashboard.core.Total;
import org.driftward.ingest.contract.JsonFormat;
import org.jdbi.v3.core.mapper.RowMapper;
import org.jspecify.annotations.Nullable;

/** What is known of each patient, one row each, in one statement. */
final class KnownRows {

  /**
   * Every join reads a bounded number of rows from the end of an index, so the cost follows the
   * number of encounters asked for and not the length of their histories.
   */
  static final String SELECT =
      """
      SELECT e.body AS encounter, p.body AS plan, s.body AS snapshot, x.body AS episode,
             t.moments, t.lows, t.highs
      FROM dashboard.encounter e
      LEFT JOIN dashboard.care_plan p ON p.encounter = e.encounter
      LEFT JOIN LATERAL (
        SELECT body, score FROM dashboard.snapshot
        WHERE encounter = e.encounter AND latest AND NOT withdrawn
        ORDER BY sequence DESC LIMIT 1) s ON true
      LEFT JOIN LATERAL (
        SELECT body FROM dashboard.episode
        WHERE encounter = e.encounter AND running
        ORDER BY opened_at DESC, episode DESC LIMIT 1) x ON true
      LEFT JOIN LATERAL (
        SELECT array_agg(as_of ORDER BY as_of, assessment) AS moments,
               array_agg(low ORDER BY as_of, assessment) AS lows,
               array_agg(high ORDER BY as_of, assessment) AS highs
        FROM (
          SELECT as_of, assessment, low, high, score FROM dashboard.snapshot
          WHERE encounter = e.encounter AND NOT withdrawn
          ORDER BY as_of DESC, assessment DESC LIMIT 12) recent
        WHERE recent.score = s.score) t ON true
      """;

  static final RowMapper<Known> MAPPER =
      (row, context) ->
          new Known(
              Tables.parse(Tables.ENCOUNTER_JSON, row.getString("encounter")),
              parsed(row, "snapshot", Tables.SNAPSHOT_JSON),
              parsed(row, "plan", Tables.CARE_PLAN_JSON),
              parsed(row, "episode", Tables.EPISODE_JSON),
              totals(row));

  private KnownRows() {}

  private static <T> @Nullable T parsed(ResultSet row, String column, JsonFormat<T> format)
      throws SQLException {
    var json = row.getString(column);
    return json == null ? null : Tables.parse(format, json);
  }

  private static List<Total> totals(ResultSet row) throws SQLException {
    Array moments = row.getArray("moments");
    if (moments == null) {
      return List.of();
    }
    var at = (Timestamp[]) moments.getArray();
    var lows = (BigDecimal[]) row.getArray("lows").getArray();
    var highs = (BigDecimal[]) row.getArray("highs").getArray();
    var totals = new ArrayList<Total>(at.length);
    for (int i = 0; i < at.length; i++) {
      totals.add(new Total(at[i].toInstant(), lows[i], highs[i]));
    }
    return totals;
  }
}
