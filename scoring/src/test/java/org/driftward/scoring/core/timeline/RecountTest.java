package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.util.List;
import java.util.Random;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Snapshot;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** What a recount knows of the log that it has read. */
class RecountTest {

  private final Recount recount = new Recount();
  private final Random random = new Random(5);

  private void tell(String encounter, int version, @Nullable String mergedInto) {
    recount.take(
        Stories.encounter(
            encounter, version, null, List.of(Course.stay("ward-1", -1)), mergedInto));
  }

  private void sign(int version) {
    recount.take(
        new CarePlan(
            "V-1",
            version,
            1,
            List.of(),
            null,
            null,
            null,
            List.of(),
            null,
            "agreed",
            "doctor",
            Course.START,
            Course.START.plus(Duration.ofDays(1))));
  }

  private List<String> said(String encounter) {
    return recount.snapshots(encounter, Fixtures.timeline().editions()).stream()
        .map(Snapshot::assessment)
        .toList();
  }

  @Test
  void shouldGatherWhatCountsInTheStayThatSurvives() {
    tell("V-1", 1, null);
    tell("V-2", 1, "V-1");
    tell("V-3", 1, "V-2");
    recount.take(Stories.assessment(random, "V-1", "A-1", 1));
    recount.take(Stories.assessment(random, "V-2", "A-2", 1));
    recount.take(Stories.assessment(random, "V-3", "A-3", 1));

    assertThat(recount.isMerged("V-1")).isFalse();
    assertThat(recount.isMerged("V-2")).isTrue();
    assertThat(said("V-1")).containsExactlyInAnyOrder("A-1", "A-2", "A-3");
    assertThat(said("V-2")).isEmpty();
    assertThat(recount.withAssessments()).containsExactlyInAnyOrder("V-1", "V-2", "V-3");
  }

  @Test
  void shouldTakeAMergeBack() {
    tell("V-2", 1, "V-1");
    recount.take(Stories.assessment(random, "V-2", "A-2", 1));
    tell("V-2", 2, null);

    assertThat(said("V-1")).isEmpty();
    assertThat(said("V-2")).containsExactly("A-2");
  }

  @Test
  void shouldForgetAssessmentsAndNotFacts() {
    tell("V-2", 1, "V-1");
    recount.take(Stories.assessment(random, "V-2", "A-2", 1));
    recount.forget("V-2");

    assertThat(recount.withAssessments()).isEmpty();
    assertThat(recount.isMerged("V-2")).isTrue();
    assertThat(said("V-1")).isEmpty();
  }

  /** A topic that keeps only the newest plan has lost the ones before. */
  @Test
  void shouldCountThePlansThatItMissed() {
    assertThat(recount.plansMissing("V-1")).isZero();
    sign(3);
    assertThat(recount.plansMissing("V-1")).isEqualTo(2);
    sign(1);
    assertThat(recount.plansMissing("V-1")).isEqualTo(1);
    sign(2);
    assertThat(recount.plansMissing("V-1")).isZero();
  }
}
