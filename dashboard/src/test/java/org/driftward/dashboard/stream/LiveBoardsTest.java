package org.driftward.dashboard.stream;

import static org.assertj.core.api.Assertions.assertThat;
import static org.awaitility.Awaitility.await;
import static org.driftward.dashboard.Samples.at;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.snapshot;

import java.time.Clock;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CopyOnWriteArrayList;
import java.util.concurrent.atomic.AtomicInteger;
import javax.sql.DataSource;
import org.driftward.dashboard.Configs;
import org.driftward.dashboard.DashboardDatabase;
import org.driftward.dashboard.core.Board;
import org.driftward.dashboard.store.Batch;
import org.driftward.dashboard.store.ReadModel;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** News by NOTIFY of a real PostgreSQL, from the writer to everybody who watches. */
class LiveBoardsTest {

  private static final Duration SOON = Duration.ofSeconds(20);

  private final WardMulticaster multicaster = new WardMulticaster();
  private ReadModel model;
  private WardListener listener;
  private LiveBoards live;

  @BeforeEach
  void start() {
    DataSource database = DashboardDatabase.emptied();
    // Nothing is read again by time alone, so whatever is seen was news.
    var config =
        Configs.of(
            Map.of(
                "driftward.dashboard.live.pause", "PT0.2S",
                "driftward.dashboard.live.refresh", "PT1H"));
    model = new ReadModel(new Database(database));
    listener = new WardListener(database, multicaster);
    live =
        new LiveBoards(
            DashboardDatabase.wards(Clock.fixed(at(0), ZoneOffset.UTC), config),
            multicaster,
            config);
    listener.start();
    await().atMost(SOON).until(() -> listener.condition().well());
  }

  @AfterEach
  void stop() {
    listener.stop();
    live.stop();
  }

  @Test
  void shouldTellTheWardThatChangedAndNoOther() {
    var here = new AtomicInteger();
    var elsewhere = new AtomicInteger();
    var listening = multicaster.listen("W1", here::incrementAndGet);
    multicaster.listen("W2", elsewhere::incrementAndGet);

    keep(encounter("V", "W1", "1", 1));
    await().atMost(SOON).until(() -> here.get() == 1);
    listening.close();
    keep(encounter("V", "W1", "2", 2));
    keep(encounter("U", "W2", "1", 1));
    await().atMost(SOON).until(() -> elsewhere.get() == 1);

    assertThat(here).hasValue(1);
  }

  @Test
  void shouldTellBothWardsOfAMove() {
    keep(encounter("V", "W1", "1", 1));
    var left = new AtomicInteger();
    var reached = new AtomicInteger();
    multicaster.listen("W1", left::incrementAndGet);
    multicaster.listen("W2", reached::incrementAndGet);

    keep(encounter("V", "W2", "1", 2));

    await().atMost(SOON).until(() -> left.get() > 0 && reached.get() > 0);
  }

  @Test
  void shouldShowEveryWatcherTheBoardNowAndAfterAChange() {
    keep(encounter("V", "W1", "1", 1));
    var seen = List.of(watch("W1"), watch("W1"), watch("W1"));
    seen.forEach(boards -> await().atMost(SOON).until(() -> boards.size() == 1));

    keep(snapshot("V", "A1", 1, 0, 6, 6));

    for (var boards : seen) {
      await().atMost(SOON).until(() -> boards.size() == 2);
      assertThat(boards.get(0).cards().get(0).score()).isNull();
      assertThat(boards.get(1).cards().get(0).score().low()).isEqualByComparingTo("6");
    }
  }

  @Test
  void shouldJoinABurstAndEndWithTheLastState() {
    keep(encounter("V", "W1", "1", 1));
    var boards = watch("W1");
    await().atMost(SOON).until(() -> boards.size() == 1);

    for (int i = 1; i <= 20; i++) {
      keep(snapshot("V", "A" + i, i, i, i, i));
    }

    await()
        .atMost(SOON)
        .until(
            () -> {
              var score = boards.get(boards.size() - 1).cards().get(0).score();
              return score != null && score.low().intValue() == 20;
            });
    assertThat(boards).hasSizeLessThan(20);
  }

  @Test
  void shouldSayNothingWhereAPersonWouldSeeNoDifference() {
    keep(encounter("V", "W1", "1", 1));
    var boards = watch("W1");
    await().atMost(SOON).until(() -> boards.size() == 1);
    var heard = new AtomicInteger();
    multicaster.listen("W1", heard::incrementAndGet);

    keep(encounter("V", "W1", "1", 1));
    await().atMost(SOON).until(() -> heard.get() == 1);
    keep(encounter("V", "W1", "2", 2));
    await().atMost(SOON).until(() -> boards.size() == 2);

    assertThat(boards.get(1).cards().get(0).bed()).isEqualTo("2");
  }

  @Test
  void shouldHearAgainAfterTheConnectionWasLost() {
    var heard = new AtomicInteger();
    multicaster.listen("W1", heard::incrementAndGet);
    DashboardDatabase.run(
        "SELECT pg_terminate_backend(pid) FROM pg_stat_activity WHERE query LIKE 'LISTEN%'");
    // Told to look again, since something may have been missed.
    await().atMost(SOON).until(() -> heard.get() >= 1 && listener.condition().well());
    int before = heard.get();

    keep(encounter("V", "W1", "1", 1));

    await().atMost(SOON).until(() -> heard.get() > before);
  }

  @Test
  void shouldSayForHowLongABoardCouldNotBeRead() {
    keep(encounter("V", "W1", "1", 1));
    var boards = watch("W1");
    await().atMost(SOON).until(() -> boards.size() == 1);
    assertThat(live.unread("W1")).isNull();

    DashboardDatabase.run("ALTER TABLE dashboard.care_plan RENAME TO care_plan_away");
    try {
      multicaster.changed("W1");
      await().atMost(SOON).until(() -> live.unread("W1") != null);
    } finally {
      DashboardDatabase.run("ALTER TABLE dashboard.care_plan_away RENAME TO care_plan");
    }
    multicaster.changed("W1");

    await().atMost(SOON).until(() -> live.unread("W1") == null);
  }

  private List<Board> watch(String ward) {
    var boards = new CopyOnWriteArrayList<Board>();
    live.of(ward).subscribe().with(boards::add);
    return boards;
  }

  private void keep(Encounter encounter) {
    keep(new Batch(List.of(encounter), List.of(), List.of(), List.of(), List.of()));
  }

  private void keep(Snapshot snapshot) {
    keep(new Batch(List.of(), List.of(), List.of(), List.of(snapshot), List.of()));
  }

  private void keep(Batch batch) {
    model.keep(batch);
  }
}
