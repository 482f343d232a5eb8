package org.driftward.dashboard.store;

import jakarta.enterprise.context.ApplicationScoped;
import java.time.Clock;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Optional;
import java.util.TreeMap;
import javax.sql.DataSource;
import org.driftward.alerts.contract.Episode;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.dashboard.config.DashboardConfig;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.core.Card;
import org.driftward.dashboard.core.Cards;
import org.driftward.dashboard.core.Cards.Known;
import org.driftward.dashboard.core.Concern;
import org.driftward.dashboard.core.PatientHistory;
import org.driftward.dashboard.core.PatientView;
import org.driftward.dashboard.core.PresentAlarms;
import org.driftward.dashboard.core.WardReader;
import org.driftward.ingest.contract.JsonFormat;
import org.driftward.ingest.contract.WardScope;
import org.jdbi.v3.core.Handle;
import org.jdbi.v3.core.Jdbi;
import org.jdbi.v3.postgres.PostgresPlugin;

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

  private final Jdbi jdbi;
  private final Clock clock;
  private final Cards cards;
  private final PresentAlarms alarms;
  private final int historyLimit;

  public StoredWards(
      DataSource dataSource, Clock clock, DashboardConfig config, PresentAlarms alarms) {
    this.jdbi = Jdbi.create(dataSource).installPlugin(new PostgresPlugin());
    this.clock = clock;
    this.cards = new Cards(config.highScore());
    this.alarms = alarms;
    this.historyLimit = config.historyLimit();
  }

  @Override
  public List<WardLine> wards(WardScope scope) {
    var lines = new TreeMap<String, WardLine>();
    scope.wards().forEach(ward -> lines.put(ward, new WardLine(ward, 0, 0)));
    jdbi.useHandle(
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
        jdbi.withHandle(
            handle ->
                handle
                    .createQuery(KnownRows.SELECT + " WHERE e.present AND e.ward = :ward")
                    .bind("ward", ward)
                    .map(KnownRows.MAPPER)
                    .list());
    return Board.of(ward, now, cards(known, now));
  }

  @Override
  public List<Card> responseQueue(WardScope scope) {
    var now = clock.instant();
    var known =
        jdbi.withHandle(
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
                    .map(KnownRows.MAPPER)
                    .list());
    return cards(known, now).stream().sorted(Concern.ORDER).toList();
  }

  @Override
  public Optional<PatientView> patient(String encounter) {
    var now = clock.instant();
    return jdbi.withHandle(handle -> read(handle, encounter))
        .map(
            read ->
                new PatientView(
                    now,
                    cards(List.of(read.known), now).get(0),
                    read.known.encounter(),
                    read.known.plan(),
                    read.known.snapshot(),
                    read.known.episode(),
                    read.story));
  }

  private record Read(Known known, List<EpisodeChange> story) {}

  private Optional<Read> read(Handle handle, String encounter) {
    return handle
        .createQuery(KnownRows.SELECT + " WHERE e.encounter = :encounter")
        .bind("encounter", encounter)
        .map(KnownRows.MAPPER)
        .findOne()
        .map(known -> new Read(known, story(handle, known)));
  }

  /** The alarms are read when the connection for the rest has gone back. */
  private List<Card> cards(List<Known> known, Instant now) {
    var episodes =
        known.stream().map(Known::episode).filter(Objects::nonNull).map(Episode::id).toList();
    var present = alarms.of(episodes);
    return known.stream()
        .map(
            one ->
                cards.card(
                    one,
                    one.episode() == null
                        ? List.of()
                        : present.getOrDefault(one.episode().id(), List.of()),
                    now))
        .toList();
  }

  private List<EpisodeChange> story(Handle handle, Known known) {
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
    return jdbi.withHandle(
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
