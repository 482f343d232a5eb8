package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.time.Instant;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.WardHandover;
import org.driftward.alerts.contract.WardHandoverDesk;
import org.driftward.alerts.core.handover.HandoverLines;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.AccountRole;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Hand-overs of wards in PostgreSQL. */
@Singleton
public class StoredWardHandoverDesk implements WardHandoverDesk {

  private static final int LONGEST_SHEET = 200_000;
  private static final int LONGEST_NOTE = 4000;
  private static final Set<String> SIGNERS =
      Set.of(AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE);

  private final Database database;
  private final Courses courses;
  private final JournalTable journal;

  public StoredWardHandoverDesk(Database database, Courses courses, JournalTable journal) {
    this.database = database;
    this.courses = courses;
    this.journal = journal;
  }

  @Override
  public Answer give(String ward, String sheet, @Nullable String note, Actor giver) {
    if (!maySign(giver)) {
      return new Answer.NotAllowed("your role hands no wards over");
    }
    if (sheet.isBlank() || sheet.length() > LONGEST_SHEET) {
      return new Answer.Incomplete("sheet", "is the list that is handed over");
    }
    if (note != null && note.length() > LONGEST_NOTE) {
      return new Answer.Incomplete("note", "longer than " + LONGEST_NOTE + " characters");
    }
    var now = courses.now();
    return database.transaction(handle -> given(handle, ward, sheet, note, giver, now));
  }

  private Answer given(
      Handle handle, String ward, String sheet, @Nullable String note, Actor giver, Instant now) {
    long number =
        handle.createQuery("SELECT nextval('alerts.handover_number')").mapTo(Long.class).one();
    var handover =
        new WardHandover(
            "WH-" + number,
            ward,
            now,
            giver.account(),
            giver.name(),
            sheet,
            note,
            null,
            null,
            null);
    handle
        .createUpdate(
            "INSERT INTO alerts.ward_handover (id, ward, given_at, body)"
                + " VALUES (:id, :ward, :given, :body::jsonb)")
        .bind("id", handover.id())
        .bind("ward", ward)
        .bind("given", now)
        .bind("body", Json.WARD_HANDOVER.text(handover))
        .execute();
    journal.append(handle, List.of(HandoverLines.given(handover)), now);
    return new Answer.Done(handover);
  }

  @Override
  public Answer receive(String id, Actor receiver) {
    if (!maySign(receiver)) {
      return new Answer.NotAllowed("your role takes no wards over");
    }
    var now = courses.now();
    return database.transaction(handle -> received(handle, id, receiver, now));
  }

  private Answer received(Handle handle, String id, Actor receiver, Instant now) {
    var known = find(handle, id, " FOR UPDATE");
    if (known.isEmpty()) {
      return new Answer.Unknown();
    }
    var handover = known.get();
    if (handover.receiver() != null) {
      return new Answer.NoLongerApplies(handover, "it has been signed for already");
    }
    if (handover.giver().equals(receiver.account())) {
      return new Answer.NotAllowed("whoever gives cannot sign as the receiver");
    }
    var signed = handover.receivedBy(receiver, now);
    handle
        .createUpdate("UPDATE alerts.ward_handover SET body = :body::jsonb WHERE id = :id")
        .bind("id", id)
        .bind("body", Json.WARD_HANDOVER.text(signed))
        .execute();
    journal.append(handle, List.of(HandoverLines.received(signed)), now);
    return new Answer.Done(signed);
  }

  @Override
  public Optional<WardHandover> find(String id) {
    return database.read(handle -> find(handle, id, ""));
  }

  private static Optional<WardHandover> find(Handle handle, String id, String lock) {
    return handle
        .createQuery("SELECT body FROM alerts.ward_handover WHERE id = :id" + lock)
        .bind("id", id)
        .mapTo(String.class)
        .findOne()
        .map(Json.WARD_HANDOVER::read);
  }

  @Override
  public List<WardHandover> recent(String ward, int limit) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT body FROM alerts.ward_handover WHERE ward = :ward"
                        + " ORDER BY given_at DESC, id DESC LIMIT :limit")
                .bind("ward", ward)
                .bind("limit", limit)
                .mapTo(String.class)
                .map(Json.WARD_HANDOVER::read)
                .list());
  }

  private static boolean maySign(Actor actor) {
    return !Collections.disjoint(actor.roles(), SIGNERS);
  }
}
