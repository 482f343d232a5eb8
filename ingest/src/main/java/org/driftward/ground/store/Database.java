package org.driftward.ground.store;

import jakarta.inject.Singleton;
import javax.sql.DataSource;
import org.driftward.ground.failure.SqlState;
import org.jdbi.v3.core.HandleCallback;
import org.jdbi.v3.core.HandleConsumer;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.postgres.PostgresPlugin;

/** The one way to PostgreSQL. Thread-safe, blocking. */
@Singleton
public class Database {

  private static final int ATTEMPTS = 4;

  private final Jdbi jdbi;

  public Database(DataSource source) {
    this.jdbi = Jdbi.create(source).installPlugin(new PostgresPlugin());
  }

  public <T> T read(HandleCallback<T, RuntimeException> work) {
    return jdbi.withHandle(work);
  }

  /** As {@link #read}, without an answer. */
  public void use(HandleConsumer<RuntimeException> work) {
    jdbi.useHandle(work);
  }

  /** As {@link #transaction}, without an answer. */
  public void change(HandleConsumer<RuntimeException> work) {
    transaction(
        handle -> {
          work.useHandle(handle);
          return true;
        });
  }

  /** One transaction; repeated as a whole, and not for ever, where PostgreSQL asks for it. */
  public <T> T transaction(HandleCallback<T, RuntimeException> work) {
    for (int attempt = 1; ; attempt++) {
      try {
        return jdbi.inTransaction(handle -> work.withHandle(handle));
      } catch (RuntimeException e) {
        if (attempt == ATTEMPTS || !SqlState.of(e).map(SqlState::asksToTryAgain).orElse(false)) {
          throw e;
        }
      }
    }
  }
}
