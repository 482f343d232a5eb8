package org.driftward.alerts.store;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.concurrent.Callable;
import java.util.concurrent.ExecutorService;
import java.util.concurrent.Executors;
import java.util.concurrent.Future;
import java.util.stream.IntStream;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeDesk.Answer;
import org.driftward.alerts.contract.EpisodeDesk.Request;
import org.driftward.alerts.store.Intake.News;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.Timeout;

/** Several instances and several people at the same time, on one database. */
@Timeout(120)
class ManyInstancesTest {

  private static final int PATIENTS = 40;

  private final TestHouse house = new TestHouse();
  private final ExecutorService pool = Executors.newFixedThreadPool(4);

  @AfterEach
  void close() {
    pool.shutdownNow();
  }

  @Test
  void shouldFireEveryDeadlineForExactlyOneInstance() throws Exception {
    open();
    house.clock.set(TestHouse.START.plusSeconds(300));

    var fired = together(4, () -> fireUntilQuiet());

    assertThat(fired.stream().mapToInt(Integer::intValue).sum()).isEqualTo(PATIENTS);
    assertThat(house.desk.list(null, Set.of(), null))
        .hasSize(PATIENTS)
        .allSatisfy(episode -> assertThat(episode.rung()).isEqualTo(1));
    assertThat(house.journal.check().entries()).isEqualTo(2L * PATIENTS);
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldLetOneOfTwoPeopleWin() throws Exception {
    open();
    house.clock.set(TestHouse.START.plusSeconds(10));

    var answers =
        together(
            4,
            () -> {
              var mine = new ArrayList<Answer>();
              for (var id : ids()) {
                var request = new Request(id, Action.ACKNOWLEDGE, 1L, null, null, null, null);
                mine.add(house.desk.act(request, People.CHARGE));
              }
              return mine;
            });

    var all = answers.stream().flatMap(List::stream).toList();
    assertThat(all).filteredOn(Answer.Done.class::isInstance).hasSize(PATIENTS);
    assertThat(all).filteredOn(Answer.NoLongerApplies.class::isInstance).hasSize(3 * PATIENTS);
    assertThat(house.journal.check().sound()).isTrue();
  }

  @Test
  void shouldTakeTheSameBatchTwiceAtOnceAndKeepItOnce() throws Exception {
    together(
        4,
        () -> {
          open();
          return true;
        });

    assertThat(house.journal.after(0, 1000)).hasSize(PATIENTS);
    assertThat(new HashSet<>(ids())).hasSize(PATIENTS);
    assertThat(house.journal.check().sound()).isTrue();
  }

  private int fireUntilQuiet() {
    int fired = 0;
    for (int round = 0; round < 40; round++) {
      fired += house.due.fire(3);
    }
    return fired;
  }

  private void open() {
    List<News> news = new ArrayList<>();
    for (int i = 0; i < PATIENTS; i++) {
      news.add(new News.Picture(Pictures.of("V-" + i, TestHouse.START).score(7).build()));
    }
    house.intake.take(news);
  }

  private static List<String> ids() {
    return IntStream.range(0, PATIENTS).mapToObj(i -> "E-V-" + i + "-1").toList();
  }

  private <T> List<T> together(int times, Callable<T> work) throws Exception {
    List<Future<T>> running = new ArrayList<>();
    for (int i = 0; i < times; i++) {
      running.add(pool.submit(work));
    }
    var results = new ArrayList<T>();
    for (var one : running) {
      results.add(one.get());
    }
    return results;
  }
}
