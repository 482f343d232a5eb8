package org.driftward.ingest.store;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.util.List;
import java.util.Optional;

/** How files with a foreign header are read, by name. Thread-safe. */
@Singleton
public class FileMappings {

  private final IntakeStore database;
  private final Clock clock;

  public FileMappings(IntakeStore database, Clock clock) {
    this.database = database;
    this.clock = clock;
  }

  /** The newest text of a name counts; the earlier ones stay on record. */
  public void put(String name, String body, String by) {
    database.transaction(
        handle ->
            handle
                .createUpdate(
                    "INSERT INTO ingest.file_mapping (name, at, by, body)"
                        + " VALUES (:name, :at, :by, :body)")
                .bind("name", name)
                .bind("at", clock.instant())
                .bind("by", by)
                .bind("body", body)
                .execute());
  }

  public Optional<String> find(String name) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT body FROM ingest.file_mapping WHERE name = :name"
                        + " ORDER BY id DESC LIMIT 1")
                .bind("name", name)
                .mapTo(String.class)
                .findOne());
  }

  public List<String> names() {
    return database.read(
        handle ->
            handle
                .createQuery("SELECT DISTINCT name FROM ingest.file_mapping ORDER BY name")
                .mapTo(String.class)
                .list());
  }
}
