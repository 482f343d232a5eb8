package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.util.Collections;
import java.util.List;
import java.util.Optional;
import java.util.Set;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CallDesk;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.contract.EpisodeDesk;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.contract.Handover;
import org.driftward.alerts.contract.HandoverDesk;
import org.driftward.alerts.contract.HandoverText;
import org.driftward.alerts.contract.PatientRecord;
import org.driftward.alerts.core.episode.Case;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.episode.Verdict;
import org.driftward.alerts.core.handover.Facts;
import org.driftward.alerts.core.handover.HandoverLines;
import org.driftward.alerts.core.handover.Isbar;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.AccountRole;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/** Hand-overs of patients in PostgreSQL. */
@Singleton
public class StoredHandoverDesk implements HandoverDesk {

  /** Longest part of a text, in characters. */
  private static final int LONGEST = 4000;

  private static final Set<String> GIVERS =
      Set.of(AccountRole.BEDSIDE, AccountRole.CHARGE, AccountRole.RESPONSE);

  private final Database database;
  private final Courses courses;
  private final Escalation escalation;
  private final Isbar isbar;
  private final PatientRecord record;
  private final EpisodeDesk episodes;
  private final CallDesk calls;
  private final Receivers receivers;
  private final DeliveryDesk deliveries;

  public StoredHandoverDesk(
      Database database,
      Courses courses,
      Escalation escalation,
      Isbar isbar,
      PatientRecord record,
      EpisodeDesk episodes,
      CallDesk calls,
      Receivers receivers,
      DeliveryDesk deliveries) {
    this.database = database;
    this.courses = courses;
    this.escalation = escalation;
    this.isbar = isbar;
    this.record = record;
    this.episodes = episodes;
    this.calls = calls;
    this.receivers = receivers;
    this.deliveries = deliveries;
  }

  @Override
  public Optional<HandoverText> draft(String encounter, Actor giver) {
    return record
        .find(encounter)
        .map(
            page -> {
              var episode = episodes.running(encounter).orElse(null);
              return isbar.draft(
                  new Facts(
                      page,
                      episode,
                      episode == null ? List.of() : episodes.story(episode.id()),
                      episode == null ? List.of() : deliveries.present(episode.id()),
                      episode == null ? null : calls.find(episode.id()).orElse(null),
                      giver,
                      courses.now()));
            });
  }

  @Override
  public Answer give(Giving giving, Actor giver) {
    if (Collections.disjoint(giver.roles(), GIVERS)) {
      return new Answer.NotAllowed("your role hands no patients over");
    }
    var page = record.find(giving.encounter());
    if (page.isEmpty()) {
      return new Answer.Unknown();
    }
    var fault = fault(giving, page.get().encounter().ward());
    return fault != null
        ? fault
        : courses.changeWith(
            giving.encounter(), (handle, session) -> given(handle, session, giving, giver));
  }

  private Answer.@Nullable Incomplete fault(Giving giving, String ward) {
    var text = giving.text();
    var to = giving.receiverAccount();
    var unfit = to == null ? null : receivers.whyNot(to.strip(), ward);
    if (unfit != null) {
      return new Answer.Incomplete("receiverAccount", unfit);
    }
    if (giving.receiver().isBlank()) {
      return new Answer.Incomplete("receiver", "names who takes over");
    }
    if (text.assessment().isBlank()) {
      return new Answer.Incomplete("assessment", "is a person's to write");
    }
    if (text.recommendation().isBlank()) {
      return new Answer.Incomplete("recommendation", "is a person's to write or confirm");
    }
    if (text.recommendation().contains(HandoverText.DRAFT.strip())) {
      return new Answer.Incomplete(
          "recommendation", "is still marked as a draft; change it, or take the mark away");
    }
    boolean tooLong =
        List.of(
                text.identify(),
                text.situation(),
                text.background(),
                text.assessment(),
                text.recommendation())
            .stream()
            .anyMatch(part -> part.length() > LONGEST);
    return tooLong ? new Answer.Incomplete("text", "longer than " + LONGEST + " characters") : null;
  }

  private Answer given(Handle handle, Session session, Giving giving, Actor giver) {
    var course = session.course(giving.encounter());
    var running = course.episode();
    var to = giving.receiverAccount();
    var id = nextId(handle);
    if (running != null && to != null && !to.equals(owner(running))) {
      var verdict = handOver(course, running, giving, id, giver, session);
      if (!(verdict instanceof Verdict.Done done)) {
        return refused(verdict);
      }
      session.take(done.decision());
    }
    var handover =
        new Handover(
            id,
            giving.encounter(),
            running == null ? null : running.id(),
            session.now(),
            giver.account(),
            giver.name(),
            giving.receiver().strip(),
            to,
            giving.text(),
            giving.readBack());
    insert(handle, handover);
    session.record(HandoverLines.of(handover));
    return new Answer.Done(handover);
  }

  private Verdict handOver(
      Course course, Case running, Giving giving, String id, Actor giver, Session session) {
    var request =
        new Request(
            running.id(),
            Action.HAND_OVER,
            null,
            "hand-over " + id,
            null,
            giving.receiverAccount(),
            null,
            giving.receiver().strip());
    return escalation.act(course, request, giver, session.now());
  }

  private static Answer refused(Verdict verdict) {
    if (verdict instanceof Verdict.NotAllowed notAllowed) {
      return new Answer.NotAllowed(notAllowed.why());
    }
    if (verdict instanceof Verdict.Incomplete incomplete) {
      return new Answer.Incomplete(incomplete.field(), incomplete.why());
    }
    return new Answer.NoLongerApplies(((Verdict.NoLongerApplies) verdict).why());
  }

  private static @Nullable String owner(Case running) {
    var owner = running.standing().owner();
    return owner == null ? null : owner.account();
  }

  private static String nextId(Handle handle) {
    return "H-"
        + handle.createQuery("SELECT nextval('alerts.handover_number')").mapTo(Long.class).one();
  }

  private static void insert(Handle handle, Handover handover) {
    handle
        .createUpdate(
            "INSERT INTO alerts.handover (id, encounter, at, body)"
                + " VALUES (:id, :encounter, :at, :body::jsonb)")
        .bind("id", handover.id())
        .bind("encounter", handover.encounter())
        .bind("at", handover.at())
        .bind("body", Json.HANDOVER.text(handover))
        .execute();
  }

  @Override
  public List<Handover> of(String encounter) {
    return database.read(
        handle ->
            handle
                .createQuery(
                    "SELECT body FROM alerts.handover WHERE encounter = :encounter"
                        + " ORDER BY at DESC, id DESC")
                .bind("encounter", encounter)
                .mapTo(String.class)
                .map(Json.HANDOVER::read)
                .list());
  }
}
