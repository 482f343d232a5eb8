package org.driftward.dashboard.store;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.dashboard.Samples.assessment;
import static org.driftward.dashboard.Samples.at;
import static org.driftward.dashboard.Samples.encounter;
import static org.driftward.dashboard.Samples.merged;
import static org.driftward.dashboard.Samples.snapshot;
import static org.driftward.dashboard.Samples.withdrawn;

import java.time.Clock;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import javax.sql.DataSource;
import org.driftward.dashboard.Configs;
import org.driftward.dashboard.DashboardDatabase;
import org.driftward.dashboard.core.Moment;
import org.driftward.dashboard.core.MomentReader.Mark;
import org.driftward.ground.store.Database;
import org.driftward.ingest.contract.Assessment;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.PublishedId;
import org.driftward.scoring.contract.Snapshot;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;

/** Encounters that were merged are read as one stay, on a real PostgreSQL. */
class OneStayTest {

  private DataSource database;
  private ReadModel model;

  /** U was merged into V, T into U; W is somebody else. A correction came after the merge. */
  @BeforeEach
  void fill() {
    database = DashboardDatabase.emptied();
    model = new ReadModel(new Database(database));
    keep(
        List.of(
            encounter("V", "W1", "1", 1),
            merged("U", "W1", "V", 2),
            merged("T", "W2", "U", 2),
            encounter("W", "W1", "2", 1)),
        List.of(
            assessment("T", "A1", 1, 0),
            assessment("V", "A2", 1, 10),
            assessment("U", "A3", 1, 20),
            assessment("V", "A3", 2, 20),
            assessment("U", "A4", 1, 30),
            assessment("W", "A5", 1, 40)),
        List.of(
            withdrawn("T", "A1", 2, 0),
            snapshot("V", "A1", 1, 0, 1, 1),
            snapshot("V", "A2", 2, 10, 2, 2),
            snapshot("V", "A3", 3, 20, 3, 3),
            snapshot("V", "A4", 4, 30, 4, 4)));
  }

  private void keep(
      List<Encounter> encounters, List<Assessment> assessments, List<Snapshot> snapshots) {
    model.keep(new Batch(encounters, List.of(), assessments, snapshots, List.of()));
  }

  private List<String> history(String encounter) {
    var wards = DashboardDatabase.wards(Clock.fixed(at(60), ZoneOffset.UTC), Configs.of(Map.of()));
    return wards.history(encounter, at(0), at(60)).assessments().stream()
        .map(OneStayTest::name)
        .toList();
  }

  private static String name(Assessment assessment) {
    return assessment.encounter() + " " + assessment.id() + " r" + assessment.revision();
  }

  @Test
  void shouldReadWhatWasRecordedUnderEveryNumberOnceInItsNewestRevision() {
    assertThat(history("V")).containsExactly("U A4 r1", "V A3 r2", "V A2 r1", "T A1 r1");
  }

  @Test
  void shouldStillReadWhatWasRecordedUnderTheNumberGivenUp() {
    assertThat(history("U")).containsExactly("U A4 r1", "U A3 r1", "T A1 r1");
    assertThat(history("W")).containsExactly("W A5 r1");
  }

  @Test
  void shouldReadPieceByPieceWithTheScoresOfTheSurvivor() {
    var moments = new StoredMoments(new Database(database));

    var first = moments.read("V", at(0), at(60), null, 3);
    var rest = moments.read("V", at(0), at(60), new Mark(at(10), "A2"), 3);

    assertThat(first).extracting(OneStayTest::total).containsExactly("A4 4", "A3 3", "A2 2");
    assertThat(rest).extracting(OneStayTest::total).containsExactly("A2 2", "A1 1");
    assertThat(first).extracting(Moment::encounter).containsOnly("V");
  }

  @Test
  void shouldFindByItsNameWhereAnAssessmentCounts() {
    var moment =
        new StoredMoments(new Database(database))
            .named(PublishedId.moment("T", "A1"))
            .orElseThrow();

    assertThat(moment.encounter()).isEqualTo("V");
    assertThat(total(moment)).isEqualTo("A1 1");
  }

  @Test
  void shouldEndWhereMergesRunInACircle() {
    keep(List.of(merged("V", "W1", "T", 3)), List.of(), List.of());

    assertThat(history("V")).hasSize(4);
    assertThat(new StoredMoments(new Database(database)).named(PublishedId.moment("T", "A1")))
        .isPresent();
  }

  private static String total(Moment moment) {
    var snapshot = moment.snapshot();
    var score = snapshot == null ? null : snapshot.leading();
    return moment.assessment().id() + " " + (score == null ? "none" : score.low().toPlainString());
  }
}
