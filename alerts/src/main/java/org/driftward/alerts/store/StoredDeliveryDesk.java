package org.driftward.alerts.store;

import jakarta.inject.Singleton;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.OffsetDateTime;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Stream;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.Channel;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Delivery.State;
import org.driftward.alerts.contract.DeliveryDesk;
import org.driftward.alerts.core.episode.Escalation;
import org.driftward.alerts.core.outreach.Dispatch;
import org.driftward.alerts.core.outreach.Reach;
import org.driftward.alerts.core.policy.Ladder;
import org.driftward.alerts.core.policy.Rung;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Word;
import org.jdbi.v3.core.statement.StatementContext;
import org.jspecify.annotations.Nullable;

/** Deliveries as people see them. */
@Singleton
public class StoredDeliveryDesk implements DeliveryDesk {

  private static final String DELIVERIES =
      "SELECT n.episode, n.rung, d.* FROM alerts.delivery d"
          + " JOIN alerts.notice n ON n.sequence = d.notice WHERE ";
  private static final String IN_ORDER = " ORDER BY d.notice DESC, d.channel, d.recipient, d.key";

  private final Database database;
  private final Courses courses;
  private final JournalTable journal;
  private final Escalation escalation;
  private final Reach reach;

  public StoredDeliveryDesk(
      Database database,
      Courses courses,
      JournalTable journal,
      Escalation escalation,
      Reach reach) {
    this.database = database;
    this.courses = courses;
    this.journal = journal;
    this.escalation = escalation;
    this.reach = reach;
  }

  @Override
  public List<Delivery> of(String episode) {
    return database.read(
        handle ->
            handle
                .createQuery(DELIVERIES + "n.episode = :episode" + IN_ORDER)
                .bind("episode", episode)
                .map(StoredDeliveryDesk::delivery)
                .list());
  }

  @Override
  public Map<String, List<Delivery>> newest(Collection<String> episodes) {
    Map<String, List<Delivery>> newest = new LinkedHashMap<>();
    if (episodes.isEmpty()) {
      return newest;
    }
    database
        .read(
            handle ->
                handle
                    .createQuery(
                        DELIVERIES
                            + "n.sequence IN (SELECT max(sequence) FROM alerts.notice"
                            + " WHERE episode = ANY (:episodes) GROUP BY episode)"
                            + IN_ORDER)
                    .bindArray("episodes", String.class, episodes)
                    .map(
                        (row, context) ->
                            Map.entry(row.getString("episode"), delivery(row, context)))
                    .list())
        .forEach(
            one ->
                newest
                    .computeIfAbsent(one.getKey(), episode -> new ArrayList<>())
                    .add(one.getValue()));
    return newest;
  }

  @Override
  public List<Tone> tones(@Nullable Set<String> wards) {
    var sql =
        "SELECT DISTINCT ON (n.episode) n.episode, n.sequence, n.tone, e.level"
            + " FROM alerts.notice n JOIN alerts.episode e ON e.id = n.episode"
            + " WHERE e.state = 'open'"
            + (wards == null ? "" : " AND e.ward = ANY (:wards)")
            + " ORDER BY n.episode, n.sequence DESC";
    return database.read(
        handle -> {
          var query = handle.createQuery("SELECT * FROM (" + sql + ") AS newest WHERE tone");
          if (wards != null) {
            query.bindArray("wards", String.class, wards);
          }
          return query
              .map(
                  (row, context) ->
                      new Tone(
                          row.getString("episode"),
                          row.getLong("sequence"),
                          Word.parse(Level.class, row.getString("level"))))
              .list();
        });
  }

  @Override
  public boolean sounded(long notice, Actor actor, @Nullable Set<String> wards) {
    return database.transaction(
        handle -> {
          var ward =
              handle
                  .createQuery("SELECT ward FROM alerts.notice WHERE sequence = :notice AND tone")
                  .bind("notice", notice)
                  .mapTo(String.class)
                  .findOne();
          if (ward.isEmpty() || (wards != null && !wards.contains(ward.get()))) {
            return false;
          }
          var page = "page of " + actor.name();
          var row =
              new DeliveryRow(
                  new Dispatch(Channel.TONE, page, actor.account(), Set.of(), null).key(notice),
                  notice,
                  Channel.TONE,
                  page,
                  actor.account(),
                  State.DELIVERED,
                  1,
                  "a page sounded; whether anybody heard it is not known");
          if (DeliveryRow.insert(handle, row, List.of(), null, courses.now())) {
            journal.append(handle, row.line(), courses.now());
          }
          return true;
        });
  }

  @Override
  public List<String> channelsOff() {
    return Stream.of(Level.values())
        .flatMap(level -> rungs(level).stream())
        .flatMap(rung -> rung.channels().stream())
        .distinct()
        .sorted()
        .filter(channel -> !reach.runs(channel))
        .map(
            channel -> "The policy tells people by " + channel.word() + ", which is not configured")
        .toList();
  }

  private List<Rung> rungs(Level level) {
    Ladder ladder = escalation.policy().ladder();
    return ladder.of(level).rungs();
  }

  private static Delivery delivery(ResultSet row, StatementContext context) throws SQLException {
    var kept = DeliveryRow.map(row, context);
    var next = row.getObject("next", OffsetDateTime.class);
    return new Delivery(
        kept.notice(),
        row.getInt("rung"),
        kept.channel(),
        kept.recipient(),
        kept.state(),
        kept.attempts(),
        row.getObject("changed", OffsetDateTime.class).toInstant(),
        kept.why(),
        next == null ? null : next.toInstant());
  }
}
