package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.time.Duration;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.time.temporal.ChronoUnit;
import java.util.List;
import org.driftward.alerts.contract.Journal.Entry;
import org.driftward.alerts.contract.Journal.Verdict;
import org.driftward.alerts.contract.JournalChain;
import org.driftward.dashboard.core.AccessBook;
import org.driftward.ground.store.Database;
import org.jdbi.v3.core.Handle;

/** {@link AccessBook} in a table that the application can add to and read, not change. */
@ApplicationScoped
public class StoredAccessBook implements AccessBook {

  /** A page that is open asks again and again; that is one look. */
  private static final Duration ONE_LOOK = Duration.ofMinutes(15);

  private static final int ROWS_AT_ONCE = 1000;

  private final Database database;
  private final Clock clock;

  public StoredAccessBook(Database database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  @Override
  public void looked(String account, String encounter, String ward, String what) {
    var now = clock.instant().truncatedTo(ChronoUnit.MILLIS);
    var look = new Look(0, now, account, encounter, ward, what);
    if (database.<Boolean>read(handle -> known(handle, look))) {
      return;
    }
    database.change(
        handle -> {
          var last =
              handle
                  .createQuery("SELECT sequence, hash FROM dashboard.access_head FOR UPDATE")
                  .map((row, context) -> new End(row.getLong("sequence"), row.getString("hash")))
                  .one();
          // Two calls of one page at once are one look as well.
          if (!known(handle, look)) {
            append(handle, last, look);
          }
        });
  }

  private record End(long sequence, String hash) {}

  private static boolean known(Handle handle, Look look) {
    return handle
        .createQuery(
            """
            SELECT EXISTS (SELECT 1 FROM dashboard.access
              WHERE account = :account AND at > :since AND at <= :now
                AND encounter = :encounter AND ward = :ward AND what = :what)
            """)
        .bind("account", look.account())
        .bind("since", look.at().minus(ONE_LOOK))
        .bind("now", look.at())
        .bind("encounter", look.encounter())
        .bind("ward", look.ward())
        .bind("what", look.what())
        .mapTo(Boolean.class)
        .one();
  }

  private static void append(Handle handle, End last, Look look) {
    var entry = chained(last, look);
    handle
        .createUpdate(
            """
            INSERT INTO dashboard.access
              (at, account, encounter, ward, what, sequence, previous, hash)
            VALUES (:at, :account, :encounter, :ward, :what, :sequence, :previous, :hash)
            """)
        .bind("at", entry.at())
        .bind("account", look.account())
        .bind("encounter", look.encounter())
        .bind("ward", look.ward())
        .bind("what", look.what())
        .bind("sequence", entry.sequence())
        .bind("previous", entry.previous())
        .bind("hash", entry.hash())
        .execute();
    handle
        .createUpdate("UPDATE dashboard.access_head SET sequence = :sequence, hash = :hash")
        .bind("sequence", entry.sequence())
        .bind("hash", entry.hash())
        .execute();
  }

  private static Entry chained(End last, Look look) {
    return JournalChain.next(
        last.sequence(),
        last.hash(),
        look.at(),
        subject(look.encounter()),
        "looked",
        look.account(),
        body(look.what(), look.ward()));
  }

  private static String subject(String encounter) {
    return "encounter/" + encounter;
  }

  /** Unambiguous: what was shown is one word. */
  private static String body(String what, String ward) {
    return what + " on ward " + ward;
  }

  @Override
  public List<Look> looks(Question question) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT coalesce(sequence, 0) AS sequence, at, account, encounter, ward, what
                    FROM dashboard.access
                    WHERE at >= :from AND at < :to
                      AND (:all OR ward = ANY(:wards))
                      AND (:encounter::text IS NULL OR encounter = :encounter)
                      AND (:account::text IS NULL OR account = :account)
                    ORDER BY at DESC, id DESC LIMIT :limit
                    """)
                .bind("from", question.from())
                .bind("to", question.to())
                .bind("all", question.scope().all())
                .bindArray("wards", String.class, question.scope().wards().toArray())
                .bind("encounter", question.encounter())
                .bind("account", question.account())
                .bind("limit", question.limit())
                .map((row, context) -> look(row))
                .list());
  }

  @Override
  public Verdict check() {
    return database.transaction(
        handle -> {
          var check = JournalChain.check(List.of());
          try (var entries =
              handle
                  .createQuery(
                      """
                      SELECT sequence, at, account, encounter, ward, what, previous, hash
                      FROM dashboard.access WHERE sequence IS NOT NULL ORDER BY sequence
                      """)
                  .setFetchSize(ROWS_AT_ONCE)
                  .map((row, context) -> entry(row))
                  .iterator()) {
            entries.forEachRemaining(check::take);
          }
          return check.finish();
        });
  }

  private static Look look(ResultSet row) throws SQLException {
    return new Look(
        row.getLong("sequence"),
        time(row),
        row.getString("account"),
        row.getString("encounter"),
        row.getString("ward"),
        row.getString("what"));
  }

  private static Entry entry(ResultSet row) throws SQLException {
    var look = look(row);
    return new Entry(
        look.sequence(),
        look.at(),
        subject(look.encounter()),
        "looked",
        look.account(),
        body(look.what(), look.ward()),
        row.getString("previous"),
        row.getString("hash"));
  }

  private static Instant time(ResultSet row) throws SQLException {
    return row.getObject("at", OffsetDateTime.class).toInstant();
  }
}
