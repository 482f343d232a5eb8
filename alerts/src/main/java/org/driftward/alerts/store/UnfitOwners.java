package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import java.util.stream.Stream;
import org.driftward.alerts.contract.People;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.ground.store.Database;

/**
 * Takes duties and episodes from people who can no longer answer for them: their account is gone,
 * they have lost the role, or they do not see the ward. Accounts change elsewhere, so it looks
 * again and again, each time at what is in force; any number of instances may do so at once.
 */
@Singleton
public class UnfitOwners {

  private final Database database;
  private final Courses courses;
  private final JournalTable journal;
  private final Escalation escalation;
  private final People people;

  public UnfitOwners(
      Database database,
      Courses courses,
      JournalTable journal,
      Escalation escalation,
      People people) {
    this.database = database;
    this.courses = courses;
    this.journal = journal;
    this.escalation = escalation;
    this.people = people;
  }

  /** What somebody answers for now. */
  private record Held(String account, String ward, String encounter) {}

  private record Unfit(Held held, String why) {}

  private record InForce(List<Shift> shifts, List<Held> episodes) {}

  /**
   * Duties first, so that no episode passes to somebody who is unfit as well.
   *
   * @return how many duties ended and episodes passed on
   */
  public int look() {
    var now =
        database.read(
            handle ->
                new InForce(ShiftTable.running(handle), EpisodeTable.held(handle, Held::new)));
    var names =
        Stream.concat(
                now.shifts.stream().map(Shift::account), now.episodes.stream().map(Held::account))
            .distinct()
            .toList();
    if (names.isEmpty()) {
      return 0;
    }
    var known = people.of(names);
    int done = 0;
    for (var shift : now.shifts) {
      var why = People.whyNot(known.get(shift.account()), shift.ward());
      done += why == null ? 0 : end(shift.id());
    }
    for (var held : now.episodes) {
      var why = People.whyNot(known.get(held.account), held.ward);
      done += why == null ? 0 : passOn(new Unfit(held, why));
    }
    return done;
  }

  private int end(String id) {
    var now = courses.now();
    return database.transaction(
        handle -> {
          var known = ShiftTable.find(handle, id, true).filter(Shift::running);
          var happenings = new ArrayList<Happening>();
          known.ifPresent(
              shift -> {
                var ended = shift.endedAt(now, null);
                ShiftTable.end(handle, ended);
                happenings.add(ShiftLines.of("ended", Happening.SERVICE, ended));
              });
          journal.append(handle, happenings, now);
          return happenings.size();
        });
  }

  private int passOn(Unfit unfit) {
    var held = unfit.held;
    return courses.changeWith(
        held.encounter,
        (handle, session) -> {
          var course = session.course(held.encounter);
          if (!Objects.equals(course.place().ward(), held.ward)) {
            return 0;
          }
          var roster = ShiftTable.roster(handle, Set.of(held.account), Set.of(held.ward));
          var decision =
              escalation.disowned(course, held.account, unfit.why, roster, session.now());
          session.take(decision);
          return decision.happenings().size();
        });
  }
}
