package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import javax.sql.DataSource;
import org.driftward.dashboard.core.AccessBook;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.postgres.PostgresPlugin;

/** {@link AccessBook} in a table that the application can add to and read, not change. */
@ApplicationScoped
public class StoredAccessBook implements AccessBook {

  private final Jdbi jdbi;
  private final Clock clock;

  public StoredAccessBook(DataSource dataSource, Clock clock) {
    this.jdbi = Jdbi.create(dataSource).installPlugin(new PostgresPlugin());
    this.clock = clock;
  }

  @Override
  public void looked(String account, String encounter, String ward, String what) {
    jdbi.useHandle(
        handle ->
            handle
                .createUpdate(
                    """
                    INSERT INTO dashboard.access (at, account, encounter, ward, what)
                    VALUES (:at, :account, :encounter, :ward, :what)
                    """)
                .bind("at", clock.instant())
                .bind("account", account)
                .bind("encounter", encounter)
                .bind("ward", ward)
                .bind("what", what)
                .execute());
  }
}
