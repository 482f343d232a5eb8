package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.time.Instant;
import java.time.OffsetDateTime;
import java.util.Optional;
import java.util.concurrent.atomic.AtomicReference;
import java.util.function.Function;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.outreach.Chance;
import org.driftward.alerts.core.outreach.Outcome;
import org.driftward.alerts.core.outreach.Parcel;
import org.driftward.alerts.core.outreach.Progress;
import org.driftward.alerts.core.policy.Outreach;
import org.driftward.ground.failure.Failures;
import org.driftward.ground.store.Database;
import org.driftward.ground.store.Quarantine;
import org.jdbi.v3.core.Handle;
import org.jspecify.annotations.Nullable;

/**
 * Hands what is due to a courier, one at a time and to one sender of all instances. The row stays
 * locked while the courier is under way: when the process dies the database sets it free at once,
 * and another takes over with the same key. So everything is sent at least once, and a receiver
 * that keeps keys takes it once.
 */
@Singleton
public class Deliveries {

  private static final String PART = "alarm-sender";

  private final Database database;
  private final Courses courses;
  private final JournalTable journal;
  private final Outreach policy;
  private final Chance chance;
  private final BadRows badRows;

  public Deliveries(
      Database database,
      Courses courses,
      JournalTable journal,
      Escalation escalation,
      Chance chance,
      BadRows badRows) {
    this.database = database;
    this.courses = courses;
    this.journal = journal;
    this.policy = escalation.policy().outreach();
    this.chance = chance;
    this.badRows = badRows;
  }

  /**
   * @return how the delivery in hand stands afterwards, or empty if nothing was due
   */
  public Optional<State> attempt(Channel channel, Function<Parcel, Outcome> courier) {
    while (true) {
      var inHand = new AtomicReference<@Nullable Locked>();
      try {
        return database.transaction(
            handle -> {
              var locked = lock(handle, channel);
              inHand.set(locked.orElse(null));
              return locked.map(one -> attempt(handle, due(handle, one.key()), courier));
            });
      } catch (RuntimeException | StackOverflowError e) {
        var bad = inHand.get();
        if (bad == null || !Failures.isOfTheItem(e)) {
          throw e;
        }
        badRows.delivery(bad.key(), bad.encounter(), PART, e);
      }
    }
  }

  /** Enough of a row to say which it is, however bad the rest may be. */
  private record Locked(String key, String encounter) {}

  private Optional<Locked> lock(Handle handle, Channel channel) {
    return handle
        .createQuery(
            "SELECT d.key, n.encounter FROM alerts.delivery d"
                + " JOIN alerts.notice n ON n.sequence = d.notice"
                + " WHERE d.channel = :channel AND d.next <= :now AND NOT "
                + Quarantine.waits("'" + BadRows.DELIVERY + "/' || d.key")
                + " ORDER BY d.next LIMIT 1 FOR UPDATE OF d SKIP LOCKED")
        .bind("channel", channel.word())
        .bind("now", courses.now())
        .map((row, context) -> new Locked(row.getString("key"), row.getString("encounter")))
        .findOne();
  }

  private record Due(DeliveryRow row, String episode, Instant end) {}

  private static Due due(Handle handle, String key) {
    return handle
        .createQuery(
            "SELECT d.*, n.episode AS episode, n.due AS due FROM alerts.delivery d"
                + " JOIN alerts.notice n ON n.sequence = d.notice WHERE d.key = :key")
        .bind("key", key)
        .map(
            (row, context) ->
                new Due(
                    DeliveryRow.map(row, context),
                    row.getString("episode"),
                    row.getObject("due", OffsetDateTime.class).toInstant()))
        .one();
  }

  private State attempt(Handle handle, Due due, Function<Parcel, Outcome> courier) {
    var row = due.row();
    if (answered(handle, due.episode())) {
      var withdrawn = new Progress(State.WITHDRAWN, null, "somebody answered before");
      return keep(handle, row, withdrawn, row.attempts());
    }
    var story = journal.story(handle, due.episode(), row.notice());
    var alarm = story.get(story.size() - 1);
    var outcome =
        courier.apply(
            new Parcel(row.key(), row.channel(), row.recipient(), row.address(), alarm, story));
    int made = row.attempts() + 1;
    var progress = Progress.after(outcome, made, due.end(), courses.now(), policy, chance.next());
    return keep(handle, row, progress, made);
  }

  private static boolean answered(Handle handle, String episode) {
    return EpisodeTable.find(handle, episode)
        .filter(now -> now.state() == EpisodeState.OPEN)
        .isEmpty();
  }

  private State keep(Handle handle, DeliveryRow row, Progress progress, int made) {
    var now = courses.now();
    var moved = row.moved(handle, progress, made, now);
    if (progress.next() == null) {
      journal.append(handle, moved.line(), now);
    }
    return moved.state();
  }
}
