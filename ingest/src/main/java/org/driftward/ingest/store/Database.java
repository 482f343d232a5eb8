package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.util.function.Supplier;
import javax.sql.DataSource;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.postgres.PostgresPlugin;

/** The one way to PostgreSQL. Thread-safe. */
@Singleton
public class Database {

  private final Jdbi jdbi;

  public Database(DataSource source) {
    this.jdbi = Jdbi.create(source).installPlugin(new PostgresPlugin());
  }

  /**
   * @throws UnavailableException if there is no connection to be had
   */
  public <T> T read(HandleCallback<T, RuntimeException> work) {
    return connected(() -> jdbi.withHandle(work));
  }

  /**
   * @throws UnavailableException if there is no connection to be had
   */
  public <T> T transaction(HandleCallback<T, RuntimeException> work) {
    return connected(() -> jdbi.inTransaction(handle -> work.withHandle(handle)));
  }

  private static <T> T connected(Supplier<T> work) {
    try {
      return work.get();
    } catch (ConnectionException e) {
      throw new UnavailableException("the database does not answer", e);
    }
  }
}
