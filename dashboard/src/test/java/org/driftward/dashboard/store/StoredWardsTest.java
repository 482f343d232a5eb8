package org.driftward.dashboard.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.assessment;
import static org.driftward.dashboard.Samples.at;
import static org.driftward.dashboard.Samples.change;
import static org.driftward.dashboard.Samples.discharged;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.episode;
import static org.driftward.dashboard.Samples.plan;
import static org.driftward.dashboard.Samples.retracted;
import static org.driftward.dashboard.Samples.snapshot;
import static org.driftward.dashboard.Samples.withdrawn;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.Set;
import javax.sql.DataSource;
import org.driftward.alerts.contract.EpisodeChange;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.dashboard.Configs;
import org.driftward.dashboard.DashboardDatabase;
import org.driftward.dashboard.core.Board.Unreadable;
import org.driftward.dashboard.core.Card;
import org.driftward.dashboard.core.Movement.Direction;
import org.driftward.dashboard.core.SetAsideReader.Missing;
import org.driftward.dashboard.core.WardReader.WardLine;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.WardScope;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** The read model on a real PostgreSQL, written and read as the application's own role. */
class StoredWardsTest {

  private DataSource database;
  private ReadModel model;
  private StoredWards wards;

  @BeforeEach
  void empty() {
    database = DashboardDatabase.emptied();
    model = new ReadModel(new Database(database));
    wards = at10();
  }

  private StoredWards at10() {
    return DashboardDatabase.wards(Clock.fixed(at(10), ZoneOffset.UTC), Configs.of(Map.of()));
  }

  @Test
  void shouldShowEverythingThatIsKnownOfAPatient() {
    keep(
        encounter("V", "W1", "3", 1),
        snapshot("V", "A1", 1, 0, 2, 2),
        snapshot("V", "A2", 2, 5, 6, 6),
        plan("V", 1, "ward care"),
        change(1, "opened", episode("E", "V", 1, EpisodeState.OPEN, Level.MEDIUM, 20)));

    var card = wards.board("W1").cards().get(0);

    assertThat(card.bed()).isEqualTo("3");
    assertThat(card.score().low()).isEqualByComparingTo("6");
    assertThat(card.movement().direction()).isEqualTo(Direction.RISING);
    assertThat(card.level()).isEqualTo(Level.MEDIUM);
    assertThat(card.reasons()).containsExactly("the score is high");
    assertThat(card.ceiling()).isEqualTo("ward care");
    assertThat(card.oxygenScale()).isEqualTo(2);
    assertThat(card.hold()).isTrue();
    assertThat(card.recentTotals())
        .extracting(total -> total.low().intValue())
        .containsExactly(2, 6);
    assertThat(card.nextDue()).isEqualTo(at(65));
  }

  @Test
  void shouldEndInTheSameViewsWhateverTheOrderAndRepetition() {
    var records = new ArrayList<Object>(history());
    keep(records.toArray());
    var board = wards.board("W1");
    var patient = wards.patient("V");
    var history = wards.history("V", at(-100), at(100));
    assertThat(board.cards()).extracting(Card::encounter).containsExactly("V");
    assertThat(board.cards().get(0).score().low()).isEqualByComparingTo("3");
    assertThat(history.assessments()).extracting(Assessment::id).containsExactly("A3", "A2", "A1");

    var random = new Random(20260105);
    for (int round = 0; round < 25; round++) {
      empty();
      var shuffled = new ArrayList<Object>(records);
      shuffled.addAll(records);
      Collections.shuffle(shuffled, random);
      int at = 0;
      while (at < shuffled.size()) {
        int end = Math.min(shuffled.size(), at + 1 + random.nextInt(5));
        keep(shuffled.subList(at, end).toArray());
        at = end;
      }

      assertThat(wards.board("W1")).isEqualTo(board);
      assertThat(wards.patient("V")).isEqualTo(patient);
      assertThat(wards.history("V", at(-100), at(100))).isEqualTo(history);
    }
  }

  /** A move, a revision, a retraction of the newest set, and an episode that comes and goes. */
  private static List<Object> history() {
    return List.of(
        encounter("V", "W2", "1", 1),
        encounter("V", "W1", "4", 2),
        encounter("U", "W1", "5", 1),
        discharged("U", "W1", 2),
        assessment("V", "A1", 1, 0),
        assessment("V", "A2", 1, 30),
        assessment("V", "A2", 2, 30),
        assessment("V", "A3", 1, 60),
        retracted("V", "A3", 2, 60),
        snapshot("V", "A1", 1, 0, 1, 1),
        snapshot("V", "A2", 2, 30, 2, 2),
        snapshot("V", "A3", 3, 60, 9, 9),
        withdrawn("V", "A3", 4, 60),
        snapshot("V", "A2", 5, 30, 3, 3),
        plan("V", 1, "first"),
        plan("V", 2, "second"),
        change(1, "opened", episode("E1", "V", 1, EpisodeState.OPEN, Level.HIGH, 20)),
        change(2, "acknowledged", episode("E1", "V", 2, EpisodeState.ACKNOWLEDGED, Level.HIGH, 40)),
        change(3, "closed", episode("E1", "V", 3, EpisodeState.CLOSED, Level.HIGH, 50)));
  }

  @Test
  void shouldFallBackToTheSetBeforeWhenTheNewestIsRetracted() {
    keep(
        encounter("V", "W1", "1", 1),
        snapshot("V", "A1", 1, 0, 1, 1),
        snapshot("V", "A2", 2, 5, 9, 9));
    keep(withdrawn("V", "A2", 3, 5));

    assertThat(wards.board("W1").cards().get(0).score().low()).isEqualByComparingTo("1");
  }

  @Test
  void shouldShowNoScoreOnceTheOnlySetIsRetracted() {
    keep(encounter("V", "W1", "1", 1), withdrawn("V", "A1", 2, 0), snapshot("V", "A1", 1, 0, 1, 1));

    assertThat(wards.board("W1").cards().get(0).score()).isNull();
  }

  @Test
  void shouldNotLetALateSetChangeTheNewestPicture() {
    keep(
        encounter("V", "W1", "1", 1),
        snapshot("V", "A2", 1, 5, 4, 4),
        snapshot("V", "A1", 2, 0, 8, 8, false));

    var card = wards.board("W1").cards().get(0);
    assertThat(card.score().low()).isEqualByComparingTo("4");
    assertThat(card.movement().direction()).isEqualTo(Direction.FALLING);
  }

  @Test
  void shouldSayWhichSnapshotsWereNews() {
    var first = snapshot("V", "A1", 2, 0, 1, 1);

    assertThat(model.keep(batch(first))).containsExactly(first);
    assertThat(model.keep(batch(first, snapshot("V", "A1", 1, 0, 7, 7)))).isEmpty();
  }

  @Test
  void shouldReadAStretchOfHistoryNewestFirst() {
    keep(
        encounter("V", "W1", "1", 1),
        assessment("V", "A1", 1, 0),
        assessment("V", "A2", 1, 10),
        assessment("V", "A3", 1, 20),
        snapshot("V", "A2", 1, 10, 1, 1),
        withdrawn("V", "A1", 2, 0));

    var stretch = wards.history("V", at(0), at(20));

    assertThat(stretch.assessments()).extracting(Assessment::id).containsExactly("A2", "A1");
    assertThat(stretch.snapshots()).extracting(Snapshot::assessment).containsExactly("A2");
    assertThat(stretch.complete()).isTrue();
  }

  @Test
  void shouldSayWhenAHistoryWasCutShort() {
    keep(assessment("V", "A1", 1, 0), assessment("V", "A2", 1, 10), assessment("V", "A3", 1, 20));
    var short2 =
        DashboardDatabase.wards(
            Clock.fixed(at(10), ZoneOffset.UTC),
            Configs.of(Map.of("driftward.dashboard.history-limit", "2")));

    var stretch = short2.history("V", at(0), at(30));

    assertThat(stretch.assessments()).extracting(Assessment::id).containsExactly("A3", "A2");
    assertThat(stretch.complete()).isFalse();
  }

  @Test
  void shouldListTheWardsOfTheScopeOnly() {
    keep(
        encounter("V", "W1", "1", 1),
        encounter("U", "W2", "1", 1),
        change(1, "opened", episode("E", "V", 1, EpisodeState.OPEN, Level.LOW, 20)));

    assertThat(wards.wards(WardScope.EVERY_WARD))
        .containsExactly(new WardLine("W1", 1, 1), new WardLine("W2", 1, 0));
    assertThat(wards.wards(WardScope.of(Set.of("W2", "W9"))))
        .containsExactly(new WardLine("W2", 1, 0), new WardLine("W9", 0, 0));
    assertThat(wards.wards(WardScope.NONE)).isEmpty();
  }

  @Test
  void shouldQueueRunningEpisodesOfTheScopeMostConcerningFirst() {
    keep(
        encounter("V", "W1", "1", 1),
        encounter("U", "W2", "1", 1),
        encounter("T", "W2", "2", 1),
        encounter("S", "W3", "2", 1),
        change(1, "opened", episode("E1", "V", 1, EpisodeState.OPEN, Level.LOW, 20)),
        change(2, "opened", episode("E2", "U", 1, EpisodeState.OPEN, Level.HIGH, 20)),
        change(3, "closed", episode("E3", "T", 2, EpisodeState.CLOSED, Level.HIGH, 20)),
        change(4, "opened", episode("E4", "S", 1, EpisodeState.OPEN, Level.HIGH, 20)));

    assertThat(wards.responseQueue(WardScope.of(Set.of("W1", "W2"))))
        .extracting(Card::encounter)
        .containsExactly("U", "V");
    assertThat(wards.responseQueue(WardScope.EVERY_WARD)).hasSize(3);
  }

  @Test
  void shouldTellTheStoryOfTheLastEpisode() {
    keep(
        encounter("V", "W1", "1", 1),
        change(3, "closed", episode("E", "V", 2, EpisodeState.CLOSED, Level.LOW, 20)),
        change(1, "opened", episode("E", "V", 1, EpisodeState.OPEN, Level.LOW, 20)));

    var patient = wards.patient("V").orElseThrow();

    assertThat(patient.episode()).isNull();
    assertThat(patient.story()).extracting(EpisodeChange::kind).containsExactly("opened", "closed");
    assertThat(wards.patient("nobody")).isEmpty();
  }

  @Test
  void shouldShowTheOthersBesideARowNobodyCanReadAndSayWhoseItIs() {
    keep(
        encounter("V", "W1", "4", 1),
        encounter("U", "W1", "5", 1),
        change(1, "opened", episode("E", "V", 1, EpisodeState.OPEN, Level.HIGH, 20)),
        change(2, "opened", episode("E2", "U", 1, EpisodeState.OPEN, Level.HIGH, 20)));
    DashboardDatabase.run(
        "UPDATE dashboard.episode SET body = jsonb_set(body, '{state}', '\"pondering\"')"
            + " WHERE encounter = 'V'");

    var board = wards.board("W1");

    assertThat(board.cards()).extracting(Card::encounter).containsExactly("U");
    assertThat(board.unreadable()).containsExactly(new Unreadable("V", "W1", "4"));
    assertThat(wards.responseQueue(WardScope.EVERY_WARD))
        .extracting(Card::encounter)
        .containsExactly("U");
    var missing =
        new StoredSetAside(new Database(database), DashboardDatabase.quarantine()).missing();
    assertThat(missing).containsExactly(new Missing("A patient cannot be shown.", "V", "W1", "4"));
  }

  private void keep(Object... records) {
    model.keep(batch(records));
  }

  private static Batch batch(Object... records) {
    var all = List.of(records);
    return new Batch(
        only(Encounter.class, all),
        only(CarePlan.class, all),
        only(Assessment.class, all),
        only(Snapshot.class, all),
        only(EpisodeChange.class, all));
  }

  private static <T> List<T> only(Class<T> type, List<Object> records) {
    return records.stream().filter(type::isInstance).map(type::cast).toList();
  }
}
