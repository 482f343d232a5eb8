package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.WorryDesk;
import org.driftward.alerts.core.episode.Decision;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.episode.Verdict;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Level;
import org.jspecify.annotations.Nullable;

/** People act on episodes in PostgreSQL. */
@Singleton
public class StoredEpisodeDesk implements EpisodeDesk, WorryDesk {

  private final Database database;
  private final Courses courses;
  private final JournalTable journal;
  private final Escalation escalation;
  private final ActionCounter counter;
  private final Receivers receivers;

  public StoredEpisodeDesk(
      Database database,
      Courses courses,
      JournalTable journal,
      Escalation escalation,
      ActionCounter counter,
      Receivers receivers) {
    this.database = database;
    this.courses = courses;
    this.journal = journal;
    this.escalation = escalation;
    this.counter = counter;
    this.receivers = receivers;
  }

  @Override
  public Answer act(Request asked, Actor actor) {
    var known = find(asked.episode());
    if (known.isEmpty()) {
      return new Answer.Unknown();
    }
    var to = asked.action() != Action.HAND_OVER || asked.to() == null ? "" : asked.to().strip();
    var receiver = to.isEmpty() ? null : receivers.find(to).orElse(null);
    var unfit = to.isEmpty() ? null : receivers.whyNot(receiver, to, known.get().ward());
    if (unfit != null) {
      return new Answer.Incomplete("to", unfit);
    }
    var request = receiver == null ? asked : asked.naming(receiver.name());
    var encounter = known.get().encounter();
    var verdict =
        courses.change(
            List.of(encounter),
            session -> {
              var found = escalation.act(session.course(encounter), request, actor, session.now());
              if (found instanceof Verdict.Done done) {
                session.take(done.decision());
              }
              return found;
            });
    return answer(verdict, request);
  }

  private Answer answer(Verdict verdict, Request request) {
    if (verdict instanceof Verdict.Done done) {
      counter.count(request.action());
      return new Answer.Done(changed(done.decision()).orElseThrow());
    }
    if (verdict instanceof Verdict.Incomplete incomplete) {
      return new Answer.Incomplete(incomplete.field(), incomplete.why());
    }
    if (verdict instanceof Verdict.NotAllowed notAllowed) {
      return new Answer.NotAllowed(notAllowed.why());
    }
    var why = ((Verdict.NoLongerApplies) verdict).why();
    return new Answer.NoLongerApplies(find(request.episode()).orElseThrow(), why);
  }

  @Override
  public Optional<Episode> worry(String encounter, String note, Actor actor) {
    return courses.change(
        List.of(encounter),
        session -> {
          var course = session.course(encounter);
          if (!course.place().present()) {
            return Optional.empty();
          }
          var decision = escalation.worry(course, note, actor, session.now());
          session.take(decision);
          return changed(decision);
        });
  }

  private static Optional<Episode> changed(Decision decision) {
    return decision.happenings().stream()
        .filter(EpisodeChanged.class::isInstance)
        .map(happening -> ((EpisodeChanged) happening).episode())
        .reduce((first, last) -> last);
  }

  @Override
  public Optional<Episode> find(String episode) {
    return database.read(handle -> EpisodeTable.find(handle, episode));
  }

  @Override
  public Optional<Episode> running(String encounter) {
    return database.read(handle -> EpisodeTable.running(handle, encounter));
  }

  @Override
  public List<Episode> list(
      @Nullable Set<String> wards, Set<EpisodeState> states, @Nullable Level level) {
    return database.read(handle -> EpisodeTable.list(handle, wards, states, level));
  }

  @Override
  public List<EpisodeChange> story(String episode) {
    return database.read(handle -> journal.story(handle, episode));
  }
}
