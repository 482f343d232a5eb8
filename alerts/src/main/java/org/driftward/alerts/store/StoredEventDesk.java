package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.time.Instant;
import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.ClinicalEvent;
import org.driftward.alerts.contract.EventDesk;
import org.driftward.alerts.core.call.CallLines;
import org.driftward.ground.store.Database;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Clinical events in PostgreSQL. */
@Singleton
public class StoredEventDesk implements EventDesk {

  private final Database database;
  private final Courses courses;
  private final JournalTable journal;

  public StoredEventDesk(Database database, Courses courses, JournalTable journal) {
    this.database = database;
    this.courses = courses;
    this.journal = journal;
  }

  @Override
  public ClinicalEvent record(
      String encounter,
      String ward,
      ClinicalEvent.Kind kind,
      @Nullable Instant at,
      boolean notForResuscitation,
      boolean expected,
      @Nullable String note,
      Actor actor) {
    var now = courses.now();
    return database.transaction(
        handle -> {
          var event =
              new ClinicalEvent(
                  "CE-" + nextNumber(handle),
                  encounter,
                  ward,
                  kind,
                  at == null ? now : at,
                  now,
                  actor.account(),
                  notForResuscitation,
                  expected,
                  note);
          insert(handle, event);
          journal.append(handle, List.of(CallLines.of(event)), now);
          return event;
        });
  }

  private static long nextNumber(Handle handle) {
    return handle.createQuery("SELECT nextval('alerts.event_number')").mapTo(Long.class).one();
  }

  private static void insert(Handle handle, ClinicalEvent event) {
    handle
        .createUpdate(
            "INSERT INTO alerts.event (id, encounter, ward, at, body)"
                + " VALUES (:id, :encounter, :ward, :at, :body::jsonb)")
        .bind("id", event.id())
        .bind("encounter", event.encounter())
        .bind("ward", event.ward())
        .bind("at", event.at())
        .bind("body", Json.EVENT.text(event))
        .execute();
  }

  @Override
  public List<ClinicalEvent> of(String encounter) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT body FROM alerts.event WHERE encounter = :encounter ORDER BY at, id")
                .bind("encounter", encounter)
                .mapTo(String.class)
                .map(Json.EVENT::read)
                .list());
  }

  @Override
  public List<ClinicalEvent> list(@Nullable Set<String> wards, Instant from, Instant to) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT body FROM alerts.event WHERE at >= :from AND at < :to"
                        + " AND (:all OR ward = ANY (:wards)) ORDER BY at, id")
                .bind("from", from)
                .bind("to", to)
                .bind("all", wards == null)
                .bindArray("wards", String.class, wards == null ? Set.of() : wards)
                .mapTo(String.class)
                .map(Json.EVENT::read)
                .list());
  }
}
