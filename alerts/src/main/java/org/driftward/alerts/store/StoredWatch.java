package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Duration;
import java.util.Collection;
import java.util.Comparator;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.WatchDesk;
import org.driftward.ground.store.Database;
import org.jdbi.v3.core.statement.StatementContext;

/**
 * A row for each process that raises and sends alarms, which it renews again and again. All times
 * are the database's, so that no two clocks are compared.
 */
@Singleton
public class StoredWatch implements WatchDesk {

  private final Database database;

  public StoredWatch(Database database) {
    this.database = database;
  }

  private record Said(Duration ago, Set<String> failing, Set<String> off) {

    static Said map(ResultSet row, StatementContext context) throws SQLException {
      return new Said(
          Duration.ofMillis(row.getLong("ago")),
          Set.of((String[]) row.getArray("failing").getArray()),
          Set.of((String[]) row.getArray("off").getArray()));
    }
  }

  /**
   * A process says that it is there. What is wrong with it replaces what it said before.
   *
   * @param process any name that no other process has
   * @param failing names of its parts, none twice
   * @param off in words, none twice
   */
  public void say(String process, Collection<String> failing, Collection<String> off) {
    database.transaction(
        handle -> {
          handle
              .createUpdate(
                  """
                  INSERT INTO alerts.watch (process, heard_at, failing, off)
                  VALUES (:process, clock_timestamp(), :failing, :off)
                  ON CONFLICT (process) DO UPDATE SET
                    heard_at = excluded.heard_at, failing = excluded.failing, off = excluded.off
                  """)
              .bind("process", process)
              .bindArray("failing", String.class, failing.toArray())
              .bindArray("off", String.class, off.toArray())
              .execute();
          return handle.execute(
              "DELETE FROM alerts.watch WHERE heard_at < clock_timestamp() - interval '1 day'");
        });
  }

  @Override
  public Watch now() {
    var all =
        database.read(
            handle ->
                handle
                    .createQuery(
                        """
                        SELECT failing, off, (1000 * EXTRACT(EPOCH FROM
                          clock_timestamp() - heard_at))::bigint AS ago
                        FROM alerts.watch
                        """)
                    .map(Said::map)
                    .list());
    var heard = all.stream().filter(said -> said.ago.compareTo(GONE) <= 0).toList();
    var silence = all.stream().map(Said::ago).min(Comparator.naturalOrder()).orElse(null);
    return new Watch(!heard.isEmpty(), silence, failingEverywhere(heard), off(heard));
  }

  private static List<String> failingEverywhere(List<Said> heard) {
    if (heard.isEmpty()) {
      return List.of();
    }
    var failing = new HashSet<>(heard.get(0).failing);
    heard.forEach(said -> failing.retainAll(said.failing));
    return failing.stream().sorted().toList();
  }

  private static List<String> off(List<Said> heard) {
    return heard.stream().flatMap(said -> said.off.stream()).distinct().sorted().toList();
  }
}
