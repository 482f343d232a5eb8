package org.driftward.dashboard.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.assessment;
import static org.driftward.dashboard.Samples.discharged;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.retracted;
import static org.driftward.dashboard.Samples.snapshot;
import static org.driftward.dashboard.Samples.withdrawn;

import java.util.List;
import org.driftward.dashboard.DashboardDatabase;
import org.driftward.dashboard.core.UnscoredReader.Unscored;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** On a real PostgreSQL; time is let pass by moving what is there into the past. */
class StoredUnscoredTest {

  private ReadModel model;
  private StoredUnscored unscored;

  @BeforeEach
  void empty() {
    var database = DashboardDatabase.emptied();
    model = new ReadModel(new Database(database));
    unscored = new StoredUnscored(new Database(database));
    keep(encounter("V", "W1", "4", 1));
  }

  @Test
  void shouldNameWhoHasAnAssessmentWithoutASnapshot() {
    keep(assessment("V", "A1", 1, 0), snapshot("V", "A1", 1, 0, 2, 2));
    keep(assessment("V", "A2", 1, 5));
    passes(60);

    assertThat(unscored.unscored()).containsExactly(new Unscored("V", "W1", "4"));

    keep(snapshot("V", "A2", 2, 5, 2, 2));
    assertThat(unscored.unscored()).isEmpty();
  }

  @Test
  void shouldBePatientAtFirstAndNotLookBackForEver() {
    keep(assessment("V", "A1", 1, 0));
    assertThat(unscored.unscored()).isEmpty();

    passes(3500);
    assertThat(unscored.unscored()).hasSize(1);

    passes(200);
    assertThat(unscored.unscored()).isEmpty();
  }

  /** The newest of a monitor that sends every few seconds are always too young to be missed. */
  @Test
  void shouldMissWhatAMonitorSent() {
    for (int i = 0; i < 20; i++) {
      keep(assessment("V", "A" + i, 1, i));
    }
    passes(60);
    for (int i = 20; i < 40; i++) {
      keep(assessment("V", "A" + i, 1, i));
    }

    assertThat(unscored.unscored()).hasSize(1);
  }

  @Test
  void shouldSortByWardAndBed() {
    keep(encounter("U", "W1", "10", 1), encounter("T", "W0", "9", 1));
    keep(assessment("U", "B1", 1, 0), assessment("V", "A1", 1, 0), assessment("T", "C1", 1, 0));
    passes(60);

    assertThat(unscored.unscored()).extracting(Unscored::encounter).containsExactly("T", "V", "U");
  }

  @Test
  void shouldNotAskForPatientsWhoHaveLeft() {
    keep(assessment("V", "A1", 1, 0), discharged("V", "W1", 2));
    passes(60);

    assertThat(unscored.unscored()).isEmpty();
  }

  @Test
  void shouldTakeAWithdrawnSnapshotForAnAnswer() {
    keep(retracted("V", "A1", 2, 0), withdrawn("V", "A1", 1, 0));
    passes(60);

    assertThat(unscored.unscored()).isEmpty();
  }

  private static void passes(int seconds) {
    DashboardDatabase.run(
        "UPDATE dashboard.assessment SET came_at = came_at - interval '%d seconds'"
            .formatted(seconds));
  }

  private void keep(Object... records) {
    var all = List.of(records);
    model.keep(
        new Batch(
            only(Encounter.class, all),
            List.of(),
            only(Assessment.class, all),
            only(Snapshot.class, all),
            List.of()));
  }

  private static <T> List<T> only(Class<T> type, List<Object> all) {
    return all.stream().filter(type::isInstance).map(type::cast).toList();
  }
}
