package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.util.function.Supplier;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.AssessmentIntake.UnavailableException;
import org.jdbi.v3.core.ConnectionException;
import org.jdbi.v3.core.HandleCallback;

/** PostgreSQL, whose absence is an answer to whoever sends: try again later. Thread-safe. */
@Singleton
public class IntakeStore {

  private final Database database;

  public IntakeStore(Database database) {
    this.database = database;
  }

  /**
   * @throws UnavailableException if there is no connection to be had
   */
  public <T> T read(HandleCallback<T, RuntimeException> work) {
    return connected(() -> database.read(work));
  }

  /**
   * @throws UnavailableException if there is no connection to be had
   */
  public <T> T transaction(HandleCallback<T, RuntimeException> work) {
    return connected(() -> database.transaction(work));
  }

  private static <T> T connected(Supplier<T> work) {
    try {
      return work.get();
    } catch (ConnectionException e) {
      throw new UnavailableException("the database does not answer", e);
    }
  }
}
