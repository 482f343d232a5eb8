package org.driftward.ground.store;

import io.micrometer.core.instrument.Counter;
import io.micrometer.core.instrument.MeterRegistry;
import jakarta.inject.Singleton;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Clock;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.driftward.ground.failure.Failures;
import org.driftward.ground.failure.SetAside;
import org.jboss.logging.Logger;
import org.jdbi.v3.core.statement.StatementContext;
import org.jspecify.annotations.Nullable;

/**
 * Keeps what could not be worked, byte for byte, so that everything else can go on; pages and
 * health read it here, and the log is told. Nothing is passed over before it has been kept: where
 * the database is away, the item waits for it. Thread-safe, blocking.
 */
@Singleton
public class Quarantine {

  private static final Logger LOG = Logger.getLogger(Quarantine.class);

  private final Database database;
  private final Clock clock;
  private final MeterRegistry registry;

  public Quarantine(Database database, Clock clock, MeterRegistry registry) {
    this.database = database;
    this.clock = clock;
    this.registry = registry;
  }

  /** What pages speak of now. */
  public record Told(String part, @Nullable String subject, @Nullable String area, String means) {

    static Told map(ResultSet row, StatementContext context) throws SQLException {
      return new Told(
          row.getString("part"),
          row.getString("subject"),
          row.getString("area"),
          row.getString("means"));
    }
  }

  /**
   * A condition in SQL: that what lies at this place waits to be tried again after {@code :now}.
   *
   * @param place an expression in SQL
   */
  public static String waits(String place) {
    return "EXISTS (SELECT FROM ground.quarantine q WHERE q.place = "
        + place
        + " AND q.again > :now)";
  }

  /**
   * Keeps it once, however often it fails; the newest failure and bytes count.
   *
   * @param payload its bytes, or null where it has none
   */
  public void keep(SetAside item, byte @Nullable [] payload, Throwable why) {
    var now = clock.instant();
    var again = item.again();
    database.transaction(
        handle ->
            handle
                .createUpdate(
                    """
                    INSERT INTO ground.quarantine AS kept (place, part, subject, area, means,
                      reason, payload, first_at, again, told_until)
                    VALUES (:place, :part, :subject, :area, :means, :reason, :payload, :now, :again,
                      :until)
                    ON CONFLICT (place) DO UPDATE SET means = excluded.means,
                      reason = excluded.reason, payload = excluded.payload, again = excluded.again,
                      told_until = excluded.told_until
                    """)
                .bind("place", item.place())
                .bind("part", item.part())
                .bind("subject", item.subject())
                .bind("area", item.area())
                .bind("means", item.means())
                .bind("reason", Failures.kind(why))
                .bind("payload", payload)
                .bind("now", now)
                .bind("again", again == null ? null : now.plus(again))
                .bind("until", now.plus(item.told()))
                .execute());
    LOG.errorf(
        "Set aside what cannot be worked: %s by %s, %s",
        item.where(), item.part(), Failures.kind(why));
    Counter.builder("driftward.set.aside")
        .description("Items that could not be worked and were set aside, by the part that tried")
        .tag("part", item.part())
        .register(registry)
        .increment();
  }

  public List<Told> told() {
    return database.read(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT part, subject, area, means FROM ground.quarantine
                    WHERE told_until > :now ORDER BY first_at, place
                    """)
                .bind("now", clock.instant())
                .map(Told::map)
                .list());
  }

  /** How many things each part has set aside, those among them that were mended since. */
  public Map<String, Long> counts() {
    var counts = new TreeMap<String, Long>();
    database
        .read(
            handle ->
                handle
                    .createQuery("SELECT part, count(*) AS n FROM ground.quarantine GROUP BY part")
                    .map((row, context) -> Map.entry(row.getString("part"), row.getLong("n")))
                    .list())
        .forEach(one -> counts.put(one.getKey(), one.getValue()));
    return counts;
  }
}
