package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import java.util.Objects;
import java.util.Set;
import org.driftward.alerts.People;
import org.driftward.alerts.contract.Actor;
import org.driftward.alerts.contract.CarePlanDesk.RefusedException;
import org.driftward.alerts.contract.PlanRequest;
import org.driftward.alerts.contract.PlanRequest.Standing;
import org.driftward.alerts.contract.PlanRequest.Temporary;
import org.driftward.ingest.contract.AccountRole;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.driftward.scoring.contract.StandingFact;
import org.driftward.scoring.contract.StandingFact.Fact;
import org.driftward.scoring.contract.StandingFacts;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/**
 * Facts of an encounter stand until somebody signs otherwise; what may be altered is bounded. Times
 * and bounds are local policy, no source.
 */
class StandingFactsTest {

  private static final Duration WEEK = Duration.ofDays(7);
  private static final Temporary NOTHING = new Temporary(List.of(), null, null, null);
  private static final Standing PREGNANT =
      new Standing(null, List.of("pregnant"), null, null, null, false);

  private final Bedside bed = new Bedside();

  @Test
  void shouldKeepAPregnancyThatAPlanWithOnlyAnIntervalLeavesOut() {
    sign(NOTHING, PREGNANT, null);
    bed.after(Duration.ofHours(1));

    sign(every(4), Standing.AS_IT_IS, bed.now.plus(Duration.ofHours(12)));

    assertThat(standing().populations()).containsExactly("pregnant");
    assertThat(signed(Fact.POPULATIONS).signedAt()).isEqualTo(Bedside.START);
  }

  @Test
  void shouldLetFactsStandWhenThePlanEnds() {
    sign(
        every(4),
        new Standing(2, List.of("pregnant"), "confused", "ward care", null, false),
        in(1));

    bed.after(Duration.ofDays(30));

    assertThat(standing())
        .isEqualTo(new StandingFacts(2, List.of("pregnant"), "confused", "ward care"));
  }

  @Test
  void shouldLetFactsStandWhenThePlanIsEndedByHand() {
    sign(every(4), new Standing(2, null, null, null, null, false), in(24));
    bed.after(Duration.ofHours(1));

    bed.take(Bedside.ESCALATION.planEnded(bed.course, "moved", People.CHARGE, bed.now));

    assertThat(standing().oxygenScale()).isEqualTo(2);
    assertThat(plan().interval()).isNull();
    assertThat(plan().inForce(bed.now)).isFalse();
  }

  @Test
  void shouldTakeAFactBackOnlyWhenToldSo() {
    sign(NOTHING, new Standing(2, List.of("pregnant"), "confused", "ward care", null, false), null);

    sign(NOTHING, new Standing(1, List.of(), "", "", null, false), null);

    assertThat(standing()).isEqualTo(StandingFacts.NONE);
    assertThat(plan().standing()).isEmpty();
  }

  @Test
  void shouldAskForAReviewAtItsTimeAndChangeNothing() {
    sign(NOTHING, PREGNANT, null);

    bed.after(WEEK.minusMillis(1));
    assertThat(plan().reviewsDue(bed.now)).isEmpty();
    bed.after(Duration.ofMillis(1));
    assertThat(plan().reviewsDue(bed.now))
        .extracting(StandingFact::fact)
        .containsExactly(Fact.POPULATIONS);
    assertThat(standing().populations()).containsExactly("pregnant");
  }

  @Test
  void shouldCountAReviewAsDoneOnlyWhenSomebodySignsAgain() {
    sign(NOTHING, PREGNANT, null);
    bed.after(WEEK);

    sign(NOTHING, PREGNANT, null);
    assertThat(plan().reviewsDue(bed.now)).hasSize(1);

    sign(NOTHING, new Standing(null, List.of("pregnant"), null, null, null, true), null);
    assertThat(plan().reviewsDue(bed.now)).isEmpty();
    assertThat(signed(Fact.POPULATIONS).signedAt()).isEqualTo(bed.now);
  }

  @Test
  void shouldRefuseAReviewLaterThanPolicyAllows() {
    var late = bed.now.plus(WEEK).plusMillis(1);

    assertThatThrownBy(() -> sign(NOTHING, new Standing(2, null, null, null, late, true), null))
        .isInstanceOf(RefusedException.class)
        .hasFieldOrPropertyWithValue("field", "reviewBy");
  }

  @Test
  void shouldTellOfNoEndWhereNothingEnds() {
    sign(NOTHING, PREGNANT, null);

    assertThat(bed.course.deadlines(Bedside.ESCALATION.policy())).isEmpty();
  }

  @Test
  void shouldNeedAnEndForWhatEnds() {
    assertThatThrownBy(() -> sign(every(4), Standing.AS_IT_IS, null))
        .isInstanceOf(RefusedException.class)
        .hasFieldOrPropertyWithValue("field", "until");
  }

  @Test
  void shouldRefuseAPlanThatSetsNothing() {
    assertThatThrownBy(() -> sign(NOTHING, Standing.AS_IT_IS, null))
        .isInstanceOf(RefusedException.class)
        .hasMessage("the plan sets nothing");
  }

  @Test
  void shouldLetClinicalRolesSignAndNotAdministrators() {
    var admin = new Actor("admin", "Admin", Set.of(AccountRole.ADMIN));

    assertThatThrownBy(() -> sign(NOTHING, PREGNANT, null, admin))
        .isInstanceOf(RefusedException.class)
        .hasFieldOrPropertyWithValue("field", "signedBy");
  }

  @ParameterizedTest
  @CsvSource({"0,350", "39,100", "50,141", "0,"})
  void shouldRefuseAnAlteredHeartRateBeyondTheBounds(BigDecimal low, @Nullable BigDecimal high) {
    assertThatThrownBy(() -> sign(limit("heart-rate", low, high), Standing.AS_IT_IS, in(12)))
        .isInstanceOf(RefusedException.class)
        .hasFieldOrPropertyWithValue("field", "limits");
  }

  @Test
  void shouldLeaveNoEndOfAnAlteredLimitOpen() {
    sign(limit("heart-rate", new BigDecimal("45"), null), Standing.AS_IT_IS, in(12));

    assertThat(plan().limits().get(0).high()).isEqualByComparingTo("140");
  }

  @Test
  void shouldRefuseToAlterWhatPolicyDoesNotName() {
    assertThatThrownBy(
            () -> sign(limit("gcs-total", BigDecimal.TEN, null), Standing.AS_IT_IS, in(12)))
        .isInstanceOf(RefusedException.class)
        .hasMessageContaining("gcs-total may not be altered");
  }

  @Test
  void shouldEndTheFactsOfAPlanFromBeforeThereWereStandingOnes() {
    var old =
        new CarePlan(
            "V-1", 1, 2, List.of(), null, null, null, "as before", "dr", Bedside.START, in(12));

    assertThat(old.standingAt(Bedside.START).oxygenScale()).isEqualTo(2);
    assertThat(old.standingAt(in(12))).isEqualTo(StandingFacts.NONE);
  }

  private void sign(Temporary temporary, Standing standing, @Nullable Instant until) {
    sign(temporary, standing, until, People.CHARGE);
  }

  private void sign(Temporary temporary, Standing standing, @Nullable Instant until, Actor actor) {
    var request =
        new PlanRequest("V-1", temporary, standing, "agreed", null, until, "Dr Six", "consultant");
    bed.signed(Bedside.ESCALATION.draft(bed.course, request, actor, bed.now), actor);
  }

  private Instant in(int hours) {
    return bed.now.plus(Duration.ofHours(hours));
  }

  private CarePlan plan() {
    return Objects.requireNonNull(bed.course.plan());
  }

  private StandingFacts standing() {
    return StandingFacts.of(bed.course.plan(), bed.now);
  }

  private StandingFact signed(Fact fact) {
    return Objects.requireNonNull(plan().standing(fact));
  }

  private static Temporary every(int hours) {
    return new Temporary(List.of(), Duration.ofHours(hours), null, null);
  }

  private static Temporary limit(String code, BigDecimal low, @Nullable BigDecimal high) {
    return new Temporary(List.of(new Limit(code, low, high)), null, null, null);
  }
}
