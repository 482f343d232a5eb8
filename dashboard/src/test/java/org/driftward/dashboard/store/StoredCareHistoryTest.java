package org.driftward.dashboard.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.at;
import static org.driftward.dashboard.Samples.discharged;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.snapshot;
import static org.driftward.dashboard.Samples.withdrawn;

import java.util.List;
import java.util.Set;
import org.driftward.alerts.contract.CareHistory.ObservedSet;
import org.driftward.alerts.contract.CareHistory.Stay;
import org.driftward.dashboard.DashboardDatabase;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Encounter;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

class StoredCareHistoryTest {

  private ReadModel model;
  private StoredCareHistory history;

  @BeforeEach
  void fill() {
    var database = DashboardDatabase.emptied();
    model = new ReadModel(new Database(database));
    history = new StoredCareHistory(new Database(database));
  }

  @Test
  void shouldTellStaysThatTouchTheStretchOnTheWardsAskedFor() {
    keep(List.of(encounter("V", "W1", "1", 1), discharged("U", "W2", 1)), List.of());

    assertThat(history.stays(null, at(0), at(700)))
        .extracting(Stay::encounter)
        .containsExactly("U", "V");
    assertThat(history.stays(Set.of("W1"), at(0), at(700)))
        .containsExactly(new Stay("V", "P-V", "W1", at(0), null, true, false));
    assertThat(history.stays(null, at(600), at(700)))
        .extracting(Stay::encounter)
        .containsExactly("V");
  }

  @Test
  void shouldMakeOneStayOfSeveralBedsOfAWard() {
    var moved = encounter("V", "W1", "1", 2);
    var stays =
        List.of(
            new org.driftward.ingest.contract.Stay("W1", "1", at(0)),
            new org.driftward.ingest.contract.Stay("W1", "2", at(10)),
            new org.driftward.ingest.contract.Stay("W2", "7", at(30)));

    assertThat(
            StoredCareHistory.of(
                new Encounter("V", moved.patient(), stays, at(0), at(90), null, 2)))
        .containsExactly(
            new Stay("V", "P-V", "W1", at(0), at(30), true, false),
            new Stay("V", "P-V", "W2", at(30), at(90), false, true));
  }

  @Test
  void shouldTellSetsWithTheirScoreAndDueTimeWithoutWithdrawnOnes() {
    var set = snapshot("V", "A1", 1, 0, 6, 8);
    keep(
        List.of(encounter("V", "W1", "1", 1)),
        List.of(set, withdrawn("V", "A2", 2, 10), snapshot("U", "B1", 1, 0, 1, 1)));

    var sets = history.sets(Set.of("V"), at(0), at(60));

    assertThat(sets).extracting(ObservedSet::assessment).containsExactly("A1");
    assertThat(sets.get(0).low()).isEqualByComparingTo("6");
    assertThat(sets.get(0).scored()).isFalse();
    assertThat(sets.get(0).due()).isEqualTo(set.nextDue());
    assertThat(sets.get(0).interval()).isEqualTo(set.interval());
    assertThat(history.snapshots("V", at(0), at(60)))
        .extracting(Snapshot::assessment)
        .containsExactly("A1");
  }

  private void keep(List<Encounter> encounters, List<Snapshot> snapshots) {
    model.keep(new Batch(encounters, List.of(), List.of(), snapshots, List.of()));
  }
}
