package org.driftward.alerts.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.shift.Roster;
import org.driftward.ground.store.Quarantine;
import org.driftward.ingest.contract.JsonFormat.MalformedException;
import org.jdbi.v3.core.Handle;

/** The shifts. */
final class ShiftTable {

  private static final String ON_WARDS_OR_OF =
      " WHERE ended_at IS NULL AND (ward = ANY (:wards) OR ward = '*' OR account = ANY (:accounts))"
          + " ORDER BY id";

  private ShiftTable() {}

  static String nextId(Handle handle) {
    return "S-"
        + handle.createQuery("SELECT nextval('alerts.shift_number')").mapTo(Long.class).one();
  }

  static void insert(Handle handle, Shift shift) {
    handle
        .createUpdate(
            """
            INSERT INTO alerts.shift (id, ward, account, from_at, until, ended_at, body)
            VALUES (:id, :ward, :account, :from, :until, :ended, :body::jsonb)
            """)
        .bind("id", shift.id())
        .bind("ward", shift.ward())
        .bind("account", shift.account())
        .bind("from", shift.from())
        .bind("until", shift.until())
        .bind("ended", shift.ended())
        .bind("body", Json.SHIFT.text(shift))
        .execute();
  }

  static void end(Handle handle, Shift ended) {
    handle
        .createUpdate(
            "UPDATE alerts.shift SET ended_at = :ended, body = :body::jsonb WHERE id = :id")
        .bind("id", ended.id())
        .bind("ended", ended.ended())
        .bind("body", Json.SHIFT.text(ended))
        .execute();
  }

  static Optional<Shift> find(Handle handle, String id, boolean lock) {
    return handle
        .createQuery("SELECT body FROM alerts.shift WHERE id = :id" + (lock ? " FOR UPDATE" : ""))
        .bind("id", id)
        .mapTo(String.class)
        .findOne()
        .map(Json.SHIFT::read);
  }

  /** Everybody who is on duty anywhere. */
  static List<Shift> running(Handle handle) {
    return handle
        .createQuery("SELECT body FROM alerts.shift WHERE ended_at IS NULL ORDER BY id")
        .mapTo(String.class)
        .map(Json.SHIFT::read)
        .list();
  }

  /** Running shifts of these wards, of every ward, and of these people. */
  static List<Shift> running(
      Handle handle, Collection<String> accounts, Collection<String> wards, String lock) {
    return handle
        .createQuery("SELECT body FROM alerts.shift" + ON_WARDS_OR_OF + lock)
        .bindArray("accounts", String.class, accounts)
        .bindArray("wards", String.class, wards)
        .mapTo(String.class)
        .map(ShiftTable::legible)
        .stream()
        .flatMap(Optional::stream)
        .toList();
  }

  /** One duty that nobody can read must keep no alarm from going out. {@link ShiftEnds} tells. */
  private static Optional<Shift> legible(String body) {
    try {
      return Optional.of(Json.SHIFT.read(body));
    } catch (MalformedException e) {
      return Optional.empty();
    }
  }

  /** Holds the running shifts against their end until the transaction is over. */
  static Roster roster(Handle handle, Collection<String> accounts, Collection<String> wards) {
    var shifts = new ArrayList<>(running(handle, accounts, wards, " FOR SHARE"));
    handle
        .createQuery(
            """
            SELECT DISTINCT ON (account) body FROM alerts.shift
            WHERE account = ANY (:accounts) AND ended_at IS NOT NULL
            ORDER BY account, ended_at DESC, from_at DESC, id DESC
            """)
        .bindArray("accounts", String.class, accounts)
        .mapTo(String.class)
        .map(ShiftTable::legible)
        .forEach(shift -> shift.ifPresent(shifts::add));
    return Roster.of(shifts);
  }

  /** A row of which only the columns have been read. */
  record Row(String id, String ward, String body) {

    /**
     * @throws RuntimeException if nobody can read it
     */
    Shift shift() {
      return Json.SHIFT.read(body);
    }
  }

  /** Every running one that is not set aside. */
  static List<Row> runningRows(Handle handle, Instant now) {
    return handle
        .createQuery(
            "SELECT id, ward, body FROM alerts.shift WHERE ended_at IS NULL AND NOT "
                + Quarantine.waits("'" + BadRows.SHIFT + "/' || id")
                + " ORDER BY id")
        .bind("now", now)
        .map(
            (row, context) ->
                new Row(row.getString("id"), row.getString("ward"), row.getString("body")))
        .list();
  }

  /**
   * The running shift if its planned end has come, locked; empty where another instance ends it.
   */
  static Optional<Shift> due(Handle handle, String id, Instant now) {
    return handle
        .createQuery(
            "SELECT body FROM alerts.shift WHERE id = :id AND ended_at IS NULL AND until <= :now"
                + " FOR UPDATE SKIP LOCKED")
        .bind("id", id)
        .bind("now", now)
        .mapTo(String.class)
        .findOne()
        .map(Json.SHIFT::read);
  }

  /** Newest first. */
  static List<Shift> between(Handle handle, String ward, Instant from, Instant to) {
    return handle
        .createQuery(
            """
            SELECT body FROM alerts.shift
            WHERE ward IN (:ward, '*') AND from_at < :to AND coalesce(ended_at, until) > :from
            ORDER BY from_at DESC, id DESC
            """)
        .bind("ward", ward)
        .bind("from", from)
        .bind("to", to)
        .mapTo(String.class)
        .map(Json.SHIFT::read)
        .list();
  }

  /** Encounters whose episode rests with somebody who has gone off duty. */
  static List<String> left(Handle handle, Instant now, int limit) {
    return handle
        .createQuery(
            """
            SELECT c.encounter FROM alerts.course c
            JOIN alerts.episode e ON e.encounter = c.encounter AND e.state <> 'closed'
            WHERE EXISTS (SELECT FROM alerts.shift s WHERE s.account = e.body->>'owner')
              AND NOT EXISTS (SELECT FROM alerts.shift s
                WHERE s.account = e.body->>'owner' AND s.ended_at IS NULL)
              AND NOT\s"""
                + Quarantine.waits("'" + BadRows.COURSE + "/' || c.encounter")
                + " ORDER BY c.encounter LIMIT :limit")
        .bind("now", now)
        .bind("limit", limit)
        .mapTo(String.class)
        .list();
  }
}
