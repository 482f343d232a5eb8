package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import org.jspecify.annotations.Nullable;

/** Keeps records that cannot be taken, byte for byte, so that the others can go on. */
@Singleton
public class Quarantine {

  private final Database database;
  private final Courses courses;

  public Quarantine(Database database, Courses courses) {
    this.database = database;
    this.courses = courses;
  }

  /** Keeps it once, however often it is delivered. */
  public void keep(
      String topic, int partition, long offset, String reason, byte @Nullable [] payload) {
    database.transaction(
        handle ->
            handle
                .createUpdate(
                    "INSERT INTO alerts.quarantine"
                        + " (topic, partition, \"offset\", at, reason, payload)"
                        + " VALUES (:topic, :partition, :offset, :at, :reason, :payload)"
                        + " ON CONFLICT DO NOTHING")
                .bind("topic", topic)
                .bind("partition", partition)
                .bind("offset", offset)
                .bind("at", courses.now())
                .bind("reason", reason)
                .bind("payload", payload)
                .execute());
  }

  public long size() {
    return database.read(
        handle ->
            handle.createQuery("SELECT count(*) FROM alerts.quarantine").mapTo(Long.class).one());
  }
}
