package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.People;
import org.driftward.alerts.contract.Shift;
import org.driftward.alerts.contract.ShiftDesk;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.alerts.core.outreach.Reach;
import org.driftward.alerts.core.shift.Duties;
import org.driftward.ground.store.Database;
import org.jdbi.v3.core.Handle;

/**
 * Shifts in PostgreSQL. The end of a shift is one transaction and passing on what its holder left
 * behind another: the first keeps anything new from resting with them, and the second is repeated
 * by {@link ShiftEnds} until nothing is left, whoever dies in between.
 */
@Singleton
public class StoredShiftDesk implements ShiftDesk {

  private static final Comparator<Shift> BY_DUTY =
      Comparator.comparing(Shift::duty)
          .thenComparing(Shift::from, Comparator.reverseOrder())
          .thenComparing(Shift::id);

  private final Database database;
  private final Courses courses;
  private final JournalTable journal;
  private final ShiftEnds ends;
  private final Duties duties;
  private final Reach reach;
  private final Receivers receivers;

  public StoredShiftDesk(
      Database database,
      Courses courses,
      JournalTable journal,
      ShiftEnds ends,
      Escalation escalation,
      Reach reach,
      Receivers receivers) {
    this.database = database;
    this.courses = courses;
    this.journal = journal;
    this.ends = ends;
    this.duties = new Duties(escalation.policy().shifts());
    this.reach = reach;
    this.receivers = receivers;
  }

  @Override
  public Answer begin(Begin begin, Actor actor) {
    var now = courses.now();
    if (!Duties.maySet(begin.account(), actor)) {
      return new Answer.NotAllowed("your role sets nobody's duty but your own");
    }
    var fault = duties.fault(begin, reach.webhooks(), now);
    if (fault != null) {
      return new Answer.Incomplete(fault.field(), fault.why());
    }
    var person = receivers.find(begin.account().strip()).orElse(null);
    var unfit = People.whyNot(person, begin.ward());
    if (unfit != null) {
      return new Answer.Incomplete("account", unfit);
    }
    var answer = database.transaction(handle -> begun(handle, begin, actor, now));
    ends.passOn();
    return answer;
  }

  private Answer begun(Handle handle, Begin begin, Actor actor, Instant now) {
    var running =
        ShiftTable.running(
            handle, Set.of(begin.account().strip()), Set.of(begin.ward()), " FOR UPDATE");
    if (begin.takesOver() != null
        && running.stream().noneMatch(shift -> shift.id().equals(begin.takesOver()))) {
      return ShiftTable.find(handle, begin.takesOver(), false)
          .<Answer>map(shift -> new Answer.NoLongerApplies(shift, "that duty has ended already"))
          .orElseGet(Answer.Unknown::new);
    }
    var shift = duties.begun(ShiftTable.nextId(handle), begin, now);
    ShiftTable.insert(handle, shift);
    var happenings = new ArrayList<Happening>();
    happenings.add(ShiftLines.of("began", actor.account(), shift));
    running.stream()
        .filter(other -> Duties.replaces(begin, other))
        .forEach(
            other -> {
              var ended = other.endedAt(now, shift.id());
              ShiftTable.end(handle, ended);
              happenings.add(ShiftLines.of("ended", actor.account(), ended));
            });
    journal.append(handle, happenings, now);
    return new Answer.Done(shift);
  }

  @Override
  public Answer end(String id, Actor actor) {
    var now = courses.now();
    var answer = database.transaction(handle -> ended(handle, id, actor, now));
    ends.passOn();
    return answer;
  }

  private Answer ended(Handle handle, String id, Actor actor, Instant now) {
    var known = ShiftTable.find(handle, id, true);
    if (known.isEmpty()) {
      return new Answer.Unknown();
    }
    var shift = known.get();
    if (!Duties.maySet(shift.account(), actor)) {
      return new Answer.NotAllowed("your role ends nobody's duty but your own");
    }
    if (!shift.running()) {
      return new Answer.NoLongerApplies(shift, "that duty has ended already");
    }
    var ended = shift.endedAt(now, null);
    ShiftTable.end(handle, ended);
    journal.append(handle, List.of(ShiftLines.of("ended", actor.account(), ended)), now);
    return new Answer.Done(ended);
  }

  @Override
  public Optional<Shift> find(String shift) {
    return database.read(handle -> ShiftTable.find(handle, shift, false));
  }

  @Override
  public List<Shift> running(String ward) {
    return database.read(handle -> ShiftTable.running(handle, Set.of(), Set.of(ward), "")).stream()
        .sorted(BY_DUTY)
        .toList();
  }

  @Override
  public List<Shift> between(String ward, Instant from, Instant to) {
    return database.read(handle -> ShiftTable.between(handle, ward, from, to));
  }
}
