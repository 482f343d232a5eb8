package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.ground.failure.Isolation;
import org.driftward.ground.store.Database;

/**
 * Ends the duties whose planned end has come, and passes on what people who went off duty left
 * behind. Any number of instances may do so at once.
 */
@Singleton
public class ShiftEnds {

  private static final String PART = "shift-clock";
  private static final int AT_ONCE = 50;

  private final Database database;
  private final Courses courses;
  private final JournalTable journal;
  private final BadRows badRows;

  public ShiftEnds(Database database, Courses courses, JournalTable journal, BadRows badRows) {
    this.database = database;
    this.courses = courses;
    this.journal = journal;
    this.badRows = badRows;
  }

  /**
   * @return how many duties ended and episodes passed on
   */
  public int look() {
    return endDue() + passOn();
  }

  /** Every running duty is read, due or not: one that nobody can read is told at once. */
  private int endDue() {
    var now = courses.now();
    var ended = new Tally();
    Isolation.apart(
        database.read(handle -> ShiftTable.runningRows(handle, now)),
        row -> {
          if (!row.shift().until().isAfter(now)) {
            ended.add(end(row.id(), now));
          }
        },
        (row, why) -> badRows.shift(row.id(), row.ward(), PART, why));
    return ended.sum();
  }

  private int end(String id, Instant now) {
    return database.transaction(
        handle -> {
          var due = ShiftTable.due(handle, id, now);
          due.map(shift -> shift.endedAt(now, null))
              .ifPresent(
                  ended -> {
                    ShiftTable.end(handle, ended);
                    var line = ShiftLines.of("ended", Happening.SERVICE, ended);
                    journal.append(handle, List.of(line), now);
                  });
          return due.isPresent() ? 1 : 0;
        });
  }

  /** Until nothing is left that nobody else is working on. */
  int passOn() {
    int all = 0;
    int some;
    do {
      some = passOnSome();
      all += some;
    } while (some == AT_ONCE);
    return all;
  }

  private int passOnSome() {
    var passed = new Tally();
    Isolation.apart(
        database.read(handle -> ShiftTable.left(handle, courses.now(), AT_ONCE)),
        encounter -> passed.add(courses.changeIfFree(encounter, one -> passOn(one, encounter))),
        (encounter, why) -> badRows.course(encounter, PART, why));
    return passed.sum();
  }

  /** What becomes of it is decided where every transaction ends, by Relief. */
  private static int passOn(Session session, String encounter) {
    if (!session.knows(encounter)) {
      return 0;
    }
    session.refresh(encounter);
    return 1;
  }
}
