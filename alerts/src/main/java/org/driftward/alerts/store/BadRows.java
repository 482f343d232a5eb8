package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.nio.charset.StandardCharsets;
import org.driftward.ground.failure.SetAside;
import org.driftward.ground.store.Database;
import org.driftward.ground.store.Quarantine;

/** Sets rows of ours aside that cannot be worked, and says what that means at the bedside. */
@Singleton
public class BadRows {

  static final String COURSE = "alerts.course";
  static final String DELIVERY = "alerts.delivery";
  static final String SHIFT = "alerts.shift";

  private final Database database;
  private final Quarantine quarantine;

  public BadRows(Database database, Quarantine quarantine) {
    this.database = database;
    this.quarantine = quarantine;
  }

  void course(String encounter, String part, Throwable why) {
    quarantine.keep(
        SetAside.row(
            COURSE,
            encounter,
            part,
            encounter,
            null,
            "Alarms can be neither raised nor followed up."),
        bytes(COURSE, "encounter", encounter),
        why);
  }

  void delivery(String key, String encounter, String part, Throwable why) {
    quarantine.keep(
        SetAside.row(
            DELIVERY,
            key,
            part,
            encounter,
            null,
            "A message is not sent, or nobody hears that it did not arrive."),
        bytes(DELIVERY, "key", key),
        why);
  }

  void shift(String id, String ward, String part, Throwable why) {
    quarantine.keep(
        SetAside.row(
            SHIFT,
            id,
            part,
            null,
            ward,
            "Somebody who came on duty counts as not on duty, so alarms go to others."),
        bytes(SHIFT, "id", id),
        why);
  }

  /** The whole row as JSON. Table and column are ours, never somebody's words. */
  private byte[] bytes(String table, String column, String key) {
    var sql = "SELECT to_jsonb(t)::text FROM %s t WHERE %s = :key".formatted(table, column);
    return database
        .read(handle -> handle.createQuery(sql).bind("key", key).mapTo(String.class).findOne())
        .orElse("")
        .getBytes(StandardCharsets.UTF_8);
  }
}
