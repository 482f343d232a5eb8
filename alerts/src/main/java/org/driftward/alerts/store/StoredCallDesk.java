package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Call;
import org.driftward.alerts.contract.Call.Step;
import org.driftward.alerts.contract.CallDesk;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.PatientRecord;
import org.driftward.alerts.core.call.CallLines;
import org.driftward.alerts.core.call.Calls;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.episode.Verdict;
import org.driftward.ground.store.Database;
import org.driftward.scoring.contract.StandingFacts;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * The records of calls in PostgreSQL; each entry in one transaction with what it does elsewhere.
 */
@Singleton
public class StoredCallDesk implements CallDesk {

  private static final Duration REPEAT = Duration.ofHours(24);

  private final Database database;
  private final Courses courses;
  private final Escalation escalation;
  private final PatientRecord record;
  private final Receivers receivers;

  public StoredCallDesk(
      Database database,
      Courses courses,
      Escalation escalation,
      PatientRecord record,
      Receivers receivers) {
    this.database = database;
    this.courses = courses;
    this.escalation = escalation;
    this.record = record;
    this.receivers = receivers;
  }

  @Override
  public Answer record(String id, Entry entry, Actor actor) {
    var known = database.read(handle -> EpisodeTable.find(handle, id));
    if (known.isEmpty()) {
      return new Answer.Unknown();
    }
    if (!Calls.mayRecord(actor)) {
      return new Answer.NotAllowed("your role records no calls");
    }
    var episode = known.get();
    if (entry instanceof Entry.HandedOver handed && !handed.to().isBlank()) {
      var unfit = receivers.whyNot(handed.to().strip(), episode.ward());
      if (unfit != null) {
        return new Answer.Incomplete("to", unfit);
      }
    }
    var answer =
        courses.changeWith(
            episode.encounter(),
            (handle, session) -> record(handle, session, episode, entry, actor));
    return answer instanceof Answer.Done done ? new Answer.Done(filled(done.call())) : answer;
  }

  private Answer record(Handle handle, Session session, Episode episode, Entry entry, Actor actor) {
    var now = session.now();
    var course = session.course(episode.encounter());
    var before =
        CallTable.find(handle, episode.id()).orElseGet(() -> begun(handle, course, episode, now));
    if (Calls.isOver(before, entry)) {
      return new Answer.NoLongerApplies(before, "the call is finished");
    }
    var fault = Calls.fault(before, entry, now);
    if (fault != null) {
      return new Answer.Incomplete(fault.field(), fault.why());
    }
    var after = Calls.after(before, entry, actor, now);
    CallTable.write(handle, after, now);
    session.record(CallLines.of(after, entry, actor.account(), now));
    move(session, course, episode, entry, actor);
    return new Answer.Done(after);
  }

  private static Call begun(Handle handle, Course course, Episode episode, Instant now) {
    var ceiling = StandingFacts.of(course.plan(), now).ceiling();
    var before = CallTable.since(handle, episode.encounter(), now.minus(REPEAT));
    return Call.notBegun(episode, ceiling, before);
  }

  /**
   * What the entry says of the episode. Somebody may have said it already; then nothing changes.
   */
  private void move(Session session, Course course, Episode episode, Entry entry, Actor actor) {
    var request = request(episode, entry);
    if (request != null
        && escalation.act(course, request, actor, session.now()) instanceof Verdict.Done done) {
      session.take(done.decision());
    }
  }

  private static @Nullable Request request(Episode episode, Entry entry) {
    if (entry instanceof Entry.Reached reached && reached.step() == Step.RECEIVED) {
      return request(episode, Action.ACKNOWLEDGE, null, null);
    }
    if (entry instanceof Entry.Reached reached && reached.step() == Step.AT_BEDSIDE) {
      return request(episode, Action.ATTEND, null, null);
    }
    return entry instanceof Entry.HandedOver handed
        ? request(episode, Action.HAND_OVER, handed.to(), handed.toName())
        : null;
  }

  private static Request request(
      Episode episode, Action action, @Nullable String to, @Nullable String name) {
    return new Request(episode.id(), action, null, "call record", null, to, null, name);
  }

  /** Read outside the transaction: the record has connections of its own. */
  private Call filled(Call call) {
    return Calls.withSigns(call, time -> record.pictureAt(call.encounter(), time));
  }

  @Override
  public Optional<Call> find(String episode) {
    return database.read(handle -> CallTable.find(handle, episode)).map(this::filled);
  }

  @Override
  public List<Call> list(@Nullable Set<String> wards, Instant from, Instant to) {
    return database.read(handle -> CallTable.list(handle, wards, from, to));
  }
}
