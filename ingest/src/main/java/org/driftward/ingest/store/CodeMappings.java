package org.driftward.ingest.store;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.util.List;
import java.util.Map;
import org.driftward.ingest.contract.CodeDesk.Decision;
import org.driftward.ingest.contract.CodeDesk.Mapped;
import org.driftward.ingest.contract.CodeDesk.Meant;
import org.driftward.ingest.contract.CodeDesk.Seen;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.Side;
import org.driftward.ingest.contract.WardScope;
import org.driftward.ingest.contract.Word;
import org.driftward.ingest.core.mapping.CodeRow;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** The journal of what people said that codes mean. Rows are only added. */
final class CodeMappings {

  private static final JsonFormat<Words> WORDS = JsonFormat.of(Words.class);

  private CodeMappings() {}

  /** What a sender says and what it means; see {@link Meant}. */
  record Words(Map<String, String> values, Map<String, String> units) {}

  /**
   * Nobody else decides about any code until the transaction ends: one code may be mapped for every
   * feed only once.
   */
  static void lock(Handle handle) {
    handle
        .createQuery(
            "SELECT pg_advisory_xact_lock(hashtextextended('ingest.code_mapping', 0))::text")
        .mapTo(String.class)
        .list();
  }

  /**
   * @param meant null takes back what was said before
   */
  static void add(Handle handle, String code, Instant at, String by, @Nullable Meant meant) {
    var words =
        meant == null ? new Words(Map.of(), Map.of()) : new Words(meant.values(), meant.units());
    var side = meant == null ? null : meant.side();
    handle
        .createUpdate(
            """
            INSERT INTO ingest.code_mapping (code, at, by, every_feed, finding, site, side, unit, words)
            VALUES (:code, :at, :by, :everyFeed, :finding, :site, :side, :unit, :words)
            """)
        .bind("code", code)
        .bind("at", at)
        .bind("by", by)
        .bind("everyFeed", meant != null && meant.everyFeed())
        .bind("finding", meant == null ? null : meant.finding())
        .bind("site", meant == null ? null : meant.site())
        .bind("side", side == null ? null : side.word())
        .bind("unit", meant == null ? null : meant.unit())
        .bind("words", new String(WORDS.write(words), StandardCharsets.UTF_8))
        .execute();
  }

  static List<Mapped> inForce(Handle handle) {
    return inForce(handle, new Sight("", WardScope.EVERY_WARD));
  }

  /** The latest word about each code, if it says what the code means; the latest first. */
  static List<Mapped> inForce(Handle handle, Sight sight) {
    return handle
        .createQuery(
            """
            SELECT m.at, m.by, m.every_feed, m.finding, m.site, m.side, m.unit, m.words,
            """
                + ForeignCodes.COLUMNS
                + """
                 FROM (SELECT DISTINCT ON (code) * FROM ingest.code_mapping
                  ORDER BY code, id DESC) m JOIN ingest.foreign_code c ON c.id = m.code
                WHERE m.finding IS NOT NULL AND
                """
                + ForeignCodes.IN_SIGHT
                + " ORDER BY m.id DESC")
        .bind("all", sight.wards().all())
        .bind("account", sight.account())
        .map((row, context) -> new Mapped(ForeignCodes.seen(row, context), decision(row)))
        .list();
  }

  /** Everything that was said about one code, the latest first. */
  static List<Decision> of(Handle handle, String code) {
    return handle
        .createQuery("SELECT * FROM ingest.code_mapping WHERE code = :code ORDER BY id DESC")
        .bind("code", code)
        .map((row, context) -> decision(row))
        .list();
  }

  /** Grows with every decision; 0 before the first. */
  static long newest(Handle handle) {
    return handle
        .createQuery("SELECT coalesce(max(id), 0) FROM ingest.code_mapping")
        .mapTo(Long.class)
        .one();
  }

  private static Decision decision(ResultSet row) throws SQLException {
    var finding = row.getString("finding");
    return new Decision(
        Columns.time(row, "at"), row.getString("by"), finding == null ? null : meant(row, finding));
  }

  private static Meant meant(ResultSet row, String finding) throws SQLException {
    var side = row.getString("side");
    var words = WORDS.read(row.getString("words").getBytes(StandardCharsets.UTF_8));
    return new Meant(
        row.getBoolean("every_feed"),
        finding,
        row.getString("site"),
        side == null ? null : Word.parse(Side.class, side),
        row.getString("unit"),
        words.values(),
        words.units());
  }

  /** As a line of a mapping, which a site's file could hold as well. */
  static CodeRow row(Seen seen, Meant meant) {
    ForeignCode code = seen.code();
    return new CodeRow(
        meant.everyFeed() ? null : code.source(),
        code.system(),
        code.code(),
        meant.finding(),
        meant.site(),
        meant.side(),
        meant.unit(),
        meant.values(),
        meant.units());
  }
}
