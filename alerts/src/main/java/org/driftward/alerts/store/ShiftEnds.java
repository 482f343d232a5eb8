package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.episode.Happening;

/**
 * Ends the duties whose planned end has come, and passes on what people who went off duty left
 * behind. Any number of instances may do so at once.
 */
@Singleton
public class ShiftEnds {

  private static final int AT_ONCE = 50;

  private final Database database;
  private final Courses courses;
  private final JournalTable journal;

  public ShiftEnds(Database database, Courses courses, JournalTable journal) {
    this.database = database;
    this.courses = courses;
    this.journal = journal;
  }

  /**
   * @return how many duties ended and episodes passed on
   */
  public int look() {
    return endDue() + passOn();
  }

  private int endDue() {
    var now = courses.now();
    return database.transaction(
        handle -> {
          var happenings = new ArrayList<Happening>();
          for (var shift : ShiftTable.due(handle, now)) {
            var ended = shift.endedAt(now, null);
            ShiftTable.end(handle, ended);
            happenings.add(ShiftLines.of("ended", Happening.SERVICE, ended));
          }
          journal.append(handle, happenings, now);
          return happenings.size();
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
    var left = new ArrayList<String>();
    return courses.inTransaction(
        handle -> {
          left.clear();
          List<Course> found = ShiftTable.left(handle, AT_ONCE);
          found.stream().map(Course::encounter).forEach(left::add);
          return found;
        },
        session -> {
          // What becomes of them is decided where every transaction ends, by Relief.
          left.forEach(session::refresh);
          return left.size();
        });
  }
}
