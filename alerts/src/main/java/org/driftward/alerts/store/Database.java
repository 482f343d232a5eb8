package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.sql.SQLException;
import java.util.Set;
import javax.sql.DataSource;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.postgres.PostgresPlugin;
import org.jspecify.annotations.Nullable;

/** The one way to PostgreSQL. Thread-safe. */
@Singleton
public class Database {

  private static final int ATTEMPTS = 4;

  /** Serialisation failure and deadlock: PostgreSQL asks to try the same again. */
  private static final Set<String> TRY_AGAIN = Set.of("40001", "40P01");

  /** Data exception and integrity violation: the same will fail again. */
  private static final Set<String> HOPELESS = Set.of("22", "23");

  private final Jdbi jdbi;

  public Database(DataSource source) {
    this.jdbi = Jdbi.create(source).installPlugin(new PostgresPlugin());
  }

  public <T> T read(HandleCallback<T, RuntimeException> work) {
    return jdbi.withHandle(work);
  }

  /** One transaction; repeated as a whole where PostgreSQL asks for it. */
  public <T> T transaction(HandleCallback<T, RuntimeException> work) {
    for (int attempt = 1; ; attempt++) {
      try {
        return jdbi.inTransaction(handle -> work.withHandle(handle));
      } catch (RuntimeException e) {
        if (attempt == ATTEMPTS || !TRY_AGAIN.contains(state(e))) {
          throw e;
        }
      }
    }
  }

  /** Whether the failure lies in what was to be kept, and not in the database being away. */
  public static boolean isHopeless(RuntimeException failure) {
    var state = state(failure);
    return state.isEmpty() ? !isOfTheDatabase(failure) : HOPELESS.contains(state.substring(0, 2));
  }

  private static boolean isOfTheDatabase(Throwable failure) {
    for (@Nullable Throwable t = failure; t != null; t = t.getCause()) {
      if (t instanceof SQLException) {
        return true;
      }
    }
    return false;
  }

  private static String state(Throwable failure) {
    for (@Nullable Throwable t = failure; t != null; t = t.getCause()) {
      if (t instanceof SQLException sql && sql.getSQLState() != null) {
        return sql.getSQLState();
      }
    }
    return "";
  }
}
