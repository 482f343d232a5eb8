package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Collection;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import java.util.function.BiConsumer;
import org.driftward.alerts.contract.Delivery;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.Board.Unreadable;
import org.driftward.dashboard.core.Card;
import org.driftward.dashboard.core.Cards;
import org.driftward.dashboard.core.Cards.Known;
import org.driftward.dashboard.core.Concern;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.core.PresentAlarms;
import org.driftward.dashboard.core.WardReader;
import org.driftward.dashboard.store.KnownRows.KnownRow;
import org.driftward.ground.failure.Isolation;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.WardScope;
import org.jdbi.v3.core.Handle;

/**
 * {@link WardReader} by SQL. One statement for a board, whose cost follows the ward's beds only.
 */
@ApplicationScoped
public class StoredWards implements WardReader {

  private static final String ASSESSMENTS =
      """
      SELECT body FROM (%s) a
      ORDER BY taken_at DESC, assessment DESC LIMIT :limit
      """
          .formatted(OneStay.assessments("taken_at >= :from AND taken_at < :to"));

  private static final String SNAPSHOTS =
      """
      SELECT body FROM dashboard.snapshot
      WHERE encounter = :encounter AND as_of >= :from AND as_of < :to AND NOT withdrawn
      ORDER BY as_of DESC, assessment DESC LIMIT :limit
      """;

  private final Database database;
  private final Clock clock;
  private final Cards cards;
  private final int historyLimit;
  private final PresentAlarms alarms;
  private final BadRows badRows;

  public StoredWards(
      Database database,
      Clock clock,
      DashboardConfig config,
      PresentAlarms alarms,
      BadRows badRows) {
    this.database = database;
    this.clock = clock;
    this.cards = new Cards(config.highScore());
    this.alarms = alarms;
    this.historyLimit = config.historyLimit();
    this.badRows = badRows;
  }

  @Override
  public List<WardLine> wards(WardScope scope) {
    var lines = new TreeMap<String, WardLine>();
    scope.wards().forEach(ward -> lines.put(ward, new WardLine(ward, 0, 0)));
    database.use(
        handle ->
            handle
                .createQuery(
                    """
                    SELECT e.ward, count(*) AS patients, count(x.episode) AS unanswered
                    FROM dashboard.encounter e
                    LEFT JOIN dashboard.episode x
                      ON x.encounter = e.encounter AND x.running AND x.body->>'state' = 'open'
                    WHERE e.present AND (:all OR e.ward = ANY(:wards))
                    GROUP BY e.ward
                    """)
                .bind("all", scope.all())
                .bindArray("wards", String.class, scope.wards().toArray())
                .map(
                    (row, context) ->
                        new WardLine(
                            row.getString("ward"),
                            row.getInt("patients"),
                            row.getInt("unanswered")))
                .forEach(line -> lines.put(line.ward(), line)));
    return List.copyOf(lines.values());
  }

  @Override
  public Board board(String ward) {
    var now = clock.instant();
    var known =
        database.read(
            handle ->
                handle
                    .createQuery(KnownRows.SELECT + " WHERE e.present AND e.ward = :ward")
                    .bind("ward", ward)
                    .map(KnownRow::map)
                    .list());
    var unreadable = new ArrayList<Unreadable>();
    var shown = cards(known, now, unreadable);
    return Board.of(ward, now, shown, unreadable);
  }

  @Override
  public List<Card> responseQueue(WardScope scope) {
    var now = clock.instant();
    var known =
        database.read(
            handle ->
                handle
                    .createQuery(
                        KnownRows.SELECT
                            + """
                               WHERE e.present AND x.body IS NOT NULL
                                 AND e.encounter IN
                                   (SELECT encounter FROM dashboard.episode WHERE running)
                                 AND (:all OR e.ward = ANY(:wards))
                              """)
                    .bind("all", scope.all())
                    .bindArray("wards", String.class, scope.wards().toArray())
                    .map(KnownRow::map)
                    .list());
    return cards(known, now, new ArrayList<>()).stream().sorted(Concern.ORDER).toList();
  }

  /**
   * One row that nobody can read hides no other, and the pages say whose it is. The alarms are read
   * when the connection for the rest has gone back.
   */
  private List<Card> cards(List<KnownRow> rows, Instant now, List<Unreadable> unreadable) {
    var readable = new LinkedHashMap<KnownRow, Known>();
    BiConsumer<KnownRow, Throwable> aside =
        (row, why) -> {
          unreadable.add(row.place());
          badRows.keep(row, why);
        };
    Isolation.apart(rows, row -> readable.put(row, row.known()), aside);
    var present = present(readable.values());
    var shown = new ArrayList<Card>(readable.size());
    Isolation.apart(
        List.copyOf(readable.keySet()),
        row -> shown.add(card(readable.get(row), present, now)),
        aside);
    return shown;
  }

  private Map<String, List<Delivery>> present(Collection<Known> known) {
    return alarms.of(
        known.stream().map(Known::episode).filter(Objects::nonNull).map(Episode::id).toList());
  }

  private Card card(Known known, Map<String, List<Delivery>> present, Instant now) {
    var episode = known.episode();
    var alarm = episode == null ? null : present.get(episode.id());
    return cards.card(known, alarm == null ? List.of() : alarm, now);
  }

  @Override
  public Optional<PatientView> patient(String encounter) {
    var now = clock.instant();
    return database
        .read(handle -> read(handle, encounter))
        .map(
            read ->
                new PatientView(
                    now,
                    card(read.known, present(List.of(read.known)), now),
                    read.known.encounter(),
                    read.known.plan(),
                    read.known.snapshot(),
                    read.known.episode(),
                    read.story));
  }

  private record Read(Known known, List<EpisodeChange> story) {}

  private static Optional<Read> read(Handle handle, String encounter) {
    return handle
        .createQuery(KnownRows.SELECT + " WHERE e.encounter = :encounter")
        .bind("encounter", encounter)
        .map(KnownRow::map)
        .findOne()
        .map(KnownRow::known)
        .map(known -> new Read(known, story(handle, known)));
  }

  private static List<EpisodeChange> story(Handle handle, Known known) {
    return handle
        .createQuery(
            """
                SELECT body FROM dashboard.episode_change
                WHERE episode = (SELECT episode FROM dashboard.episode WHERE encounter = :encounter
                  ORDER BY running DESC, opened_at DESC, episode DESC LIMIT 1)
                ORDER BY sequence
                """)
        .bind("encounter", known.encounter().id())
        .mapTo(String.class)
        .map(json -> Tables.parse(Tables.EPISODE_CHANGE_JSON, json))
        .list();
  }

  @Override
  public PatientHistory history(String encounter, Instant from, Instant to) {
    return database.read(
        handle -> {
          var assessments =
              stretch(handle, ASSESSMENTS, Tables.ASSESSMENT_JSON, encounter, from, to);
          var snapshots = stretch(handle, SNAPSHOTS, Tables.SNAPSHOT_JSON, encounter, from, to);
          return new PatientHistory(
              encounter,
              assessments.stream().limit(historyLimit).toList(),
              snapshots.stream().limit(historyLimit).toList(),
              assessments.size() <= historyLimit && snapshots.size() <= historyLimit);
        });
  }

  /** One more than the limit, to know whether something was left off. */
  private <T> List<T> stretch(
      Handle handle, String sql, JsonFormat<T> format, String encounter, Instant from, Instant to) {
    return handle
        .createQuery(sql)
        .bind("encounter", encounter)
        .bind("from", from)
        .bind("to", to)
        .bind("limit", historyLimit + 1)
        .mapTo(String.class)
        .map(json -> Tables.parse(format, json))
        .list();
  }
}
