package org.driftward.ingest.store;

import java.nio.charset.StandardCharsets;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.Collection;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.UUID;
import java.util.stream.Stream;
import org.driftward.ingest.contract.CodeDesk.Seen;
import org.driftward.ingest.contract.ForeignCode;
import org.driftward.ingest.contract.IntakeDesk.Sight;
import org.driftward.ingest.contract.Rejection;
import org.driftward.ingest.contract.UnmappedCode;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.statement.StatementContext;

/** Codes that came in and meant nothing, with the refusals that carried them. */
final class ForeignCodes {

  static final String COLUMNS =
      "c.id, c.source, c.system, c.code, c.text, c.units, c.messages, c.first_at, c.last_at,"
          + " c.example";

  /** As of refusals: what an account of some wards sent itself. */
  static final String IN_SIGHT =
      " (:all OR c.source IN ('http/' || :account, 'file/' || :account))";

  /** The refusals that carried it and that no replay has brought in whole. */
  private static final String HELD =
      """
       FROM ingest.foreign_code_refusal f JOIN ingest.refusal r ON r.id = f.refusal
      WHERE f.code = :code AND NOT EXISTS (SELECT FROM ingest.replay_outcome o
        WHERE o.refusal = r.id AND o.outcome = 'accepted')
      """;

  private static final int MOST_UNITS = 12;

  /** More than anybody maps in a day; when these are mapped, the next ones show. */
  private static final int MOST_LISTED = 500;

  private ForeignCodes() {}

  /** One code in one refusal. */
  private record Sighting(String id, UnmappedCode seen, Rejection refusal) {}

  /** Counts each refusal once; the refusals themselves must have been written. */
  static void write(Handle handle, Collection<Rejection> rejections) {
    // In one order, so that two processes never wait for each other.
    rejections.stream()
        .filter(each -> each.replayOf() == null)
        .flatMap(ForeignCodes::sightings)
        .sorted(Comparator.comparing(Sighting::id))
        .forEach(each -> write(handle, each));
  }

  private static Stream<Sighting> sightings(Rejection rejection) {
    var unmapped = rejection.unmapped();
    return unmapped == null
        ? Stream.empty()
        : unmapped.stream().map(code -> new Sighting(id(code.code()), code, rejection));
  }

  private static void write(Handle handle, Sighting sighting) {
    var code = sighting.seen().code();
    var unit = sighting.seen().unit();
    handle
        .createUpdate(
            """
            WITH carried AS (
              INSERT INTO ingest.foreign_code_refusal (code, refusal) VALUES (:id, :refusal)
              ON CONFLICT DO NOTHING RETURNING 1)
            INSERT INTO ingest.foreign_code AS c (id, source, system, code, text, units, messages,
              first_at, last_at, example)
            VALUES (:id, :source, :system, :code, :text, :units, (SELECT count(*) FROM carried),
              :at, :at, :refusal)
            ON CONFLICT (id) DO UPDATE SET
              text = coalesce(excluded.text, c.text),
              units = (SELECT coalesce(array_agg(u ORDER BY u), '{}') FROM (SELECT DISTINCT
                unnest(c.units || excluded.units) AS u ORDER BY u LIMIT :mostUnits) AS every_unit),
              messages = c.messages + excluded.messages,
              first_at = least(c.first_at, excluded.first_at),
              last_at = greatest(c.last_at, excluded.last_at),
              example = excluded.example
            """)
        .bind("id", sighting.id())
        .bind("refusal", sighting.refusal().id())
        .bind("source", code.source())
        .bind("system", code.system())
        .bind("code", code.code())
        .bind("text", sighting.seen().text())
        .bindArray("units", String.class, unit == null ? List.of() : List.of(unit))
        .bind("mostUnits", MOST_UNITS)
        .bind("at", sighting.refusal().receivedAt())
        .execute();
  }

  /** The same code of the same feed has the same id in every house. */
  static String id(ForeignCode code) {
    var whole = String.join("\n", code.source(), code.system(), code.code());
    return UUID.nameUUIDFromBytes(whole.getBytes(StandardCharsets.UTF_8)).toString();
  }

  static List<Seen> mostFrequent(Handle handle, Sight sight) {
    return handle
        .createQuery(
            "SELECT "
                + COLUMNS
                + " FROM ingest.foreign_code c WHERE"
                + IN_SIGHT
                + " ORDER BY c.messages DESC, c.id LIMIT :most")
        .bind("all", sight.wards().all())
        .bind("account", sight.account())
        .bind("most", MOST_LISTED)
        .map(ForeignCodes::seen)
        .list();
  }

  static Optional<Seen> find(Handle handle, String id, Sight sight) {
    return handle
        .createQuery(
            "SELECT " + COLUMNS + " FROM ingest.foreign_code c WHERE c.id = :id AND" + IN_SIGHT)
        .bind("id", id)
        .bind("all", sight.wards().all())
        .bind("account", sight.account())
        .map(ForeignCodes::seen)
        .findOne();
  }

  static Seen seen(ResultSet row, StatementContext context) throws SQLException {
    return new Seen(
        row.getString("id"),
        new ForeignCode(row.getString("source"), row.getString("system"), row.getString("code")),
        row.getString("text"),
        List.of((String[]) row.getArray("units").getArray()),
        row.getLong("messages"),
        Columns.time(row, "first_at"),
        Columns.time(row, "last_at"),
        row.getString("example"));
  }

  /** Oldest first. */
  static List<String> held(Handle handle, String id, int most) {
    return handle
        .createQuery("SELECT r.id" + HELD + " ORDER BY r.received_at, r.id LIMIT :most")
        .bind("code", id)
        .bind("most", most)
        .mapTo(String.class)
        .list();
  }

  static long countHeld(Handle handle, String id) {
    return handle.createQuery("SELECT count(*)" + HELD).bind("code", id).mapTo(Long.class).one();
  }
}
