package org.driftward.dashboard.account;

import java.time.Instant;
import org.driftward.dashboard.account.Patience.Failures;
import org.driftward.ground.store.Database;
import org.jdbi.v3.core.mapper.RowMapper;

/** Failed sign-ins in PostgreSQL, so that every process of the cluster counts the same. */
final class FailureStore {

  private static final RowMapper<Failures> ROW =
      (row, context) ->
          new Failures(
              row.getInt("failures"),
              row.getTimestamp("last_at").toInstant(),
              row.getTimestamp("locked_until").toInstant());

  private final Database database;

  FailureStore(Database database) {
    this.database = database;
  }

  Failures find(String subject) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT failures, last_at, locked_until FROM dashboard.sign_in_failure
                    WHERE subject = :subject
                    """)
                .bind("subject", subject)
                .map(ROW)
                .findOne()
                .orElse(Failures.NONE));
  }

  /** Counts one more failure; two at once count as two. */
  void failed(String subject, Patience patience, Instant now) {
    database.change(
        handle -> {
          handle
              .createUpdate(
                  """
                  INSERT INTO dashboard.sign_in_failure (subject, failures, last_at, locked_until)
                  VALUES (:subject, 0, :never, :never) ON CONFLICT (subject) DO NOTHING
                  """)
              .bind("subject", subject)
              .bind("never", Failures.NONE.lastAt())
              .execute();
          var before =
              handle
                  .createQuery(
                      """
                      SELECT failures, last_at, locked_until FROM dashboard.sign_in_failure
                      WHERE subject = :subject FOR UPDATE
                      """)
                  .bind("subject", subject)
                  .map(ROW)
                  .one();
          var after = patience.failed(before, now);
          handle
              .createUpdate(
                  """
                  UPDATE dashboard.sign_in_failure
                  SET failures = :failures, last_at = :lastAt, locked_until = :lockedUntil
                  WHERE subject = :subject
                  """)
              .bind("subject", subject)
              .bind("failures", after.failures())
              .bind("lastAt", after.lastAt())
              .bind("lockedUntil", after.lockedUntil())
              .execute();
        });
  }

  void forget(String subject) {
    database.use(
        handle ->
            handle.execute("DELETE FROM dashboard.sign_in_failure WHERE subject = ?", subject));
  }

  void forgetBefore(Instant time) {
    database.use(
        handle -> handle.execute("DELETE FROM dashboard.sign_in_failure WHERE last_at < ?", time));
  }
}
