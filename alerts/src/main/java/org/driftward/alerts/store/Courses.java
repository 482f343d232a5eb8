package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.time.Clock;
import java.time.Instant;
import java.time.temporal.ChronoUnit;
import java.util.Collection;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeSet;
import java.util.function.BiFunction;
import java.util.function.Function;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.core.episode.Course;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.episode.Happening;
import org.driftward.alerts.core.episode.Happening.EpisodeChanged;
import org.driftward.alerts.core.episode.Happening.PlanSigned;
import org.driftward.ground.store.Database;
import org.driftward.scoring.contract.CarePlan;
import org.jdbi.v3.core.Handle;

/**
 * Locks courses, lets somebody decide about them, and keeps everything that follows in the same
 * transaction. Thread-safe.
 */
@Singleton
public class Courses {

  private final Database database;
  private final Escalation escalation;
  private final JournalTable journal;
  private final Relief relief;
  private final DeliveryPlan deliveries;
  private final Bell bell;
  private final Clock clock;

  public Courses(
      Database database,
      Escalation escalation,
      JournalTable journal,
      DeliveryPlan deliveries,
      Bell bell,
      Clock clock) {
    this.database = database;
    this.escalation = escalation;
    this.journal = journal;
    this.relief = new Relief(escalation);
    this.deliveries = deliveries;
    this.bell = bell;
    this.clock = clock;
  }

  /** Wall clock, to the millisecond: the precision of everything that alerts keeps. */
  public Instant now() {
    return clock.instant().truncatedTo(ChronoUnit.MILLIS);
  }

  /** Encounters not heard of before begin their course. */
  public <T> T change(Collection<String> encounters, Function<Session, T> work) {
    return inTransaction(handle -> lockOrBegin(handle, encounters), (handle, s) -> work.apply(s));
  }

  /** As {@link #change}, for work that keeps tables of its own in the same transaction. */
  <T> T changeWith(String encounter, BiFunction<Handle, Session, T> work) {
    return inTransaction(handle -> lockOrBegin(handle, List.of(encounter)), work);
  }

  /**
   * As {@link #change}, of one course, which the session does not know where somebody else works on
   * it now: what is to be done is left to them.
   */
  <T> T changeIfFree(String encounter, Function<Session, T> work) {
    return changeIfFreeWith(encounter, (handle, session) -> work.apply(session));
  }

  /** As {@link #changeIfFree}, for work that keeps tables of its own in the same transaction. */
  <T> T changeIfFreeWith(String encounter, BiFunction<Handle, Session, T> work) {
    return inTransaction(handle -> lock(handle, List.of(encounter), " SKIP LOCKED"), work);
  }

  private <T> T inTransaction(
      Function<Handle, List<Course>> chosen, BiFunction<Handle, Session, T> work) {
    var result =
        database.transaction(
            handle -> {
              var courses = new HashMap<String, Course>();
              chosen.apply(handle).forEach(course -> courses.put(course.encounter(), course));
              var session = new Session(now(), courses);
              T answer = work.apply(handle, session);
              relief.settle(handle, session);
              keep(handle, session);
              return new Result<>(answer, !session.happenings().isEmpty());
            });
    if (result.news()) {
      bell.ring();
    }
    return result.answer();
  }

  private record Result<T>(T answer, boolean news) {}

  Optional<Course> find(String encounter) {
    return database.read(
        handle ->
            handle
                .createQuery("SELECT body FROM alerts.course WHERE encounter = :encounter")
                .bind("encounter", encounter)
                .mapTo(String.class)
                .findOne()
                .map(Json.COURSE::read));
  }

  /** In the order of the encounters, always. */
  private static List<Course> lockOrBegin(Handle handle, Collection<String> encounters) {
    var wanted = new TreeSet<>(encounters);
    var locked = lock(handle, wanted, "");
    locked.forEach(course -> wanted.remove(course.encounter()));
    if (wanted.isEmpty()) {
      return locked;
    }
    begin(handle, wanted);
    return lock(handle, new TreeSet<>(encounters), "");
  }

  private static List<Course> lock(Handle handle, Collection<String> encounters, String wait) {
    return handle
        .createQuery(
            "SELECT body FROM alerts.course WHERE encounter = ANY (:encounters)"
                + " ORDER BY encounter FOR UPDATE"
                + wait)
        .bindArray("encounters", String.class, encounters)
        .mapTo(String.class)
        .map(Json.COURSE::read)
        .list();
  }

  private static void begin(Handle handle, Collection<String> encounters) {
    var batch =
        handle.prepareBatch(
            "INSERT INTO alerts.course (encounter, ward, present, body)"
                + " VALUES (:encounter, :ward, :present, :body::jsonb) ON CONFLICT DO NOTHING");
    for (var encounter : encounters) {
      var course = Course.begin(encounter);
      batch
          .bind("encounter", encounter)
          .bind("ward", course.place().ward())
          .bind("present", course.place().present())
          .bind("body", Json.COURSE.text(course))
          .add();
    }
    batch.execute();
  }

  private void keep(Handle handle, Session session) {
    update(handle, session.changed());
    Deadlines.write(handle, session.changed(), escalation.policy());
    episodes(handle, session.happenings());
    carePlans(handle, session.happenings());
    var sequences = journal.append(handle, session.happenings(), session.now());
    deliveries.keep(handle, session.happenings(), sequences, session.now());
  }

  private static void update(Handle handle, List<Course> courses) {
    if (courses.isEmpty()) {
      return;
    }
    var batch =
        handle.prepareBatch(
            "UPDATE alerts.course SET ward = :ward, bed = :bed, present = :present,"
                + " body = :body::jsonb WHERE encounter = :encounter");
    for (var course : courses) {
      batch
          .bind("encounter", course.encounter())
          .bind("ward", course.place().ward())
          .bind("bed", course.place().bed())
          .bind("present", course.place().present())
          .bind("body", Json.COURSE.text(course))
          .add();
    }
    batch.execute();
  }

  /** Of several changes of one episode in a transaction only the last is what others see. */
  private static void episodes(Handle handle, List<Happening> happenings) {
    Map<String, Episode> newest = new HashMap<>();
    for (var happening : happenings) {
      if (happening instanceof EpisodeChanged changed) {
        newest.put(changed.episode().id(), changed.episode());
      }
    }
    EpisodeTable.write(handle, newest.values());
  }

  private static void carePlans(Handle handle, List<Happening> happenings) {
    for (var happening : happenings) {
      if (happening instanceof PlanSigned signed) {
        insert(handle, signed.plan());
      }
    }
  }

  private static void insert(Handle handle, CarePlan plan) {
    handle
        .createUpdate(
            "INSERT INTO alerts.care_plan (encounter, version, body)"
                + " VALUES (:encounter, :version, :body::jsonb)")
        .bind("encounter", plan.encounter())
        .bind("version", plan.version())
        .bind("body", Json.CARE_PLAN.text(plan))
        .execute();
  }
}
