package org.driftward.scoring.core.timeline;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.driftward.scoring.core.policy.Restart;
import org.driftward.scoring.core.timeline.Course.Plan;
import org.junit.jupiter.api.Test;

/**
 * What begins a new quiet period. That these do is local policy, no source; five values make a
 * baseline by the shipped policy.
 */
class RestartTest {

  private static final int ENOUGH = 6;

  private static Course settled() {
    return new Course(Fixtures.timeline()).breathing(0, ENOUGH, 16);
  }

  private static boolean hasBaseline(Course course) {
    return !course.latest().drift().isEmpty();
  }

  @Test
  void shouldKeepTheBaselineWhileNothingChanges() {
    assertThat(hasBaseline(settled().breathing(ENOUGH, 1, 16))).isTrue();
  }

  @Test
  void shouldBeginAnewOnAnotherWard() {
    var moved =
        settled().tell(2, Course.stay("ward-1", -1), Course.stay("ward-2", 6)).breathing(7, 1, 16);
    assertThat(hasBaseline(moved)).isFalse();
    assertThat(hasBaseline(moved.breathing(8, ENOUGH, 16))).isTrue();
  }

  @Test
  void shouldKeepTheBaselineOfAnotherBedOnTheWard() {
    var moved =
        settled().tell(2, Course.stay("ward-1", -1), Course.stay("ward-1", 6)).breathing(7, 1, 16);
    assertThat(hasBaseline(moved)).isTrue();
  }

  @Test
  void shouldKeepTheBaselineUnderAPlanThatLeavesTheOxygenScale() {
    assertThat(hasBaseline(settled().sign(6, Plan.PLAIN).breathing(7, 1, 16))).isTrue();
  }

  @Test
  void shouldBeginAnewWithAnotherOxygenScaleAndNotWithItsRenewal() {
    var scaleTwo = new Plan(2, List.of(), null);
    var prescribed = settled().sign(6, scaleTwo).breathing(7, 1, 16);
    assertThat(hasBaseline(prescribed)).isFalse();

    var renewed = prescribed.breathing(8, ENOUGH, 16).sign(14, scaleTwo).breathing(15, 1, 16);
    assertThat(hasBaseline(renewed)).isTrue();

    assertThat(hasBaseline(renewed.sign(16, Plan.PLAIN).breathing(17, 1, 16))).isFalse();
  }

  @Test
  void shouldBeginAnewFromTheHourOfSurgeryThatAPlanNames() {
    var operated = new Plan(1, List.of(), Course.hour(6));
    var after = settled().breathing(7, 2, 24).sign(9, operated).breathing(10, 3, 24);
    assertThat(hasBaseline(after)).isFalse();

    var usual = after.breathing(13, 1, 24).latest().drift().get(0);
    assertThat(usual.baseline()).isEqualTo(24);
    assertThat(usual.from()).isEqualTo(Course.hour(7));
  }

  @Test
  void shouldTakeBackTheSurgeryOfAPlanThatAnotherReplacesFromItsBeginning() {
    var operated = new Plan(1, List.of(), Course.hour(2));
    var signed = settled().sign(5, operated);
    assertThat(hasBaseline(signed)).isFalse();

    assertThat(hasBaseline(signed.sign(5, Plan.PLAIN))).isTrue();
  }

  /** A hospital may count every newly signed plan; ours does not. */
  @Test
  void shouldBeginAnewUnderAnyPlanWhereThePolicySaysSo() {
    var every = new Course(Fixtures.restartingOn(Restart.CARE_PLAN)).breathing(0, ENOUGH, 16);
    assertThat(hasBaseline(every)).isTrue();

    assertThat(hasBaseline(every.sign(6, Plan.PLAIN).breathing(7, 1, 16))).isFalse();
  }

  @Test
  void shouldNotBeginAnewForWhatThePolicyDoesNotCount() {
    var only = new Course(Fixtures.restartingOn(Restart.CARE_PLAN)).breathing(0, ENOUGH, 16);
    only.tell(2, Course.stay("ward-1", -1), Course.stay("ward-2", 6)).breathing(7, 1, 16);
    assertThat(hasBaseline(only)).isTrue();

    var never = new Course(Fixtures.restartingOn()).breathing(0, ENOUGH, 16);
    never.sign(6, new Plan(2, List.of(), Course.hour(6))).breathing(7, 1, 16);
    assertThat(hasBaseline(never)).isTrue();
  }

  /** From the millisecond of the move on; what was taken at that very time is taken there. */
  @Test
  void shouldBeginAnewExactlyAtTheTimeOfTheMove() {
    var moved = settled().tell(2, Course.stay("ward-1", -1), Course.stay("ward-2", 7));
    assertThat(hasBaseline(moved.breathing(6, 1, 16))).isTrue();
    assertThat(hasBaseline(moved.breathing(7, 1, 16))).isFalse();
  }
}
