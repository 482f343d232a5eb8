package org.driftward.alerts.store;

import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Optional;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.shift.Roster;
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
        .map(Json.SHIFT::read)
        .list();
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
        .map(Json.SHIFT::read)
        .forEach(shifts::add);
    return Roster.of(shifts);
  }

  /** Those whose planned end has come, locked; what another instance ends now is left to it. */
  static List<Shift> due(Handle handle, Instant now) {
    return handle
        .createQuery(
            "SELECT body FROM alerts.shift WHERE ended_at IS NULL AND until <= :now"
                + " ORDER BY id FOR UPDATE SKIP LOCKED")
        .bind("now", now)
        .mapTo(String.class)
        .map(Json.SHIFT::read)
        .list();
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

  /** Courses whose episode rests with somebody who has gone off duty, locked. */
  static List<Course> left(Handle handle, int limit) {
    return handle
        .createQuery(
            """
            SELECT c.body FROM alerts.course c
            JOIN alerts.episode e ON e.encounter = c.encounter AND e.state <> 'closed'
            WHERE EXISTS (SELECT FROM alerts.shift s WHERE s.account = e.body->>'owner')
              AND NOT EXISTS (SELECT FROM alerts.shift s
                WHERE s.account = e.body->>'owner' AND s.ended_at IS NULL)
            ORDER BY c.encounter LIMIT :limit FOR UPDATE OF c SKIP LOCKED
            """)
        .bind("limit", limit)
        .mapTo(String.class)
        .map(Json.COURSE::read)
        .list();
  }
}
