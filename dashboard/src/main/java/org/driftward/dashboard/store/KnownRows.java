package org.driftward.dashboard.store;

import java.math.BigDecimal;
import java.sql.Array;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Timestamp;
import java.util.ArrayList;
import java.util.List;
import org.driftward.dashboard.core.Board.Unreadable;
import org.driftward.dashboard.core.Cards.Known;
import org.driftward.dashboard.core.Total;
import org.driftward.ingest.contract.JsonFormat;
import org.jdbi.v3.core.statement.StatementContext;
import org.jspecify.annotations.Nullable;

/** What is known of each patient, one row each, in one statement. */
final class KnownRows {

  /**
   * Every join reads a bounded number of rows from the end of an index, so the cost follows the
   * number of encounters asked for and not the length of their histories.
   */
  static final String SELECT =
      """
      SELECT e.encounter AS id, e.ward, e.body->'stays'->-1->>'bed' AS bed,
             e.body AS encounter, p.body AS plan, s.body AS snapshot, x.body AS episode,
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

  /** One row as text, which is read where one that is bad can be told from the others. */
  record KnownRow(
      Unreadable place,
      String encounter,
      @Nullable String snapshot,
      @Nullable String plan,
      @Nullable String episode,
      List<Total> totals) {

    static KnownRow map(ResultSet row, StatementContext context) throws SQLException {
      return new KnownRow(
          new Unreadable(row.getString("id"), row.getString("ward"), row.getString("bed")),
          row.getString("encounter"),
          row.getString("snapshot"),
          row.getString("plan"),
          row.getString("episode"),
          KnownRows.totals(row));
    }

    /**
     * @throws RuntimeException if some of it cannot be read
     */
    Known known() {
      return new Known(
          Tables.parse(Tables.ENCOUNTER_JSON, encounter),
          parsed(snapshot, Tables.SNAPSHOT_JSON),
          parsed(plan, Tables.CARE_PLAN_JSON),
          parsed(episode, Tables.EPISODE_JSON),
          totals);
    }

    private static <T> @Nullable T parsed(@Nullable String json, JsonFormat<T> format) {
      return json == null ? null : Tables.parse(format, json);
    }

    /** Whose row it is, and nothing else of it. */
    @Override
    public String toString() {
      return "KnownRow[" + place.encounter() + "]";
    }
  }

  private KnownRows() {}

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
