package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.CarePlanDesk.RefusedException;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.core.episode.Happening.PlanEnded;
import org.driftward.alerts.core.episode.Happening.PlanSigned;
import org.driftward.alerts.core.episode.Happening.Suppressed;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.CarePlan.Hold;
import org.driftward.scoring.contract.CarePlan.Limit;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Signed settings: what they keep quiet, and that they end. */
class CarePlanTest {

  private static final Duration DAY = Duration.ofDays(1);

  private final Bedside bed = new Bedside();

  @Test
  void shouldCountVersionsAndKeepTheSigner() {
    bed.signed(plan(null), People.CHARGE).signed(plan(null), People.RESPONSE);

    assertThat(bed.happenings)
        .filteredOn(PlanSigned.class::isInstance)
        .extracting(happening -> ((PlanSigned) happening).plan().version())
        .containsExactly(1L, 2L);
    assertThat(bed.course.plan().signedBy()).isEqualTo(People.RESPONSE.account());
  }

  @Test
  void shouldRefuseWhatLocalPolicyDoesNotAllow() {
    assertThatThrownBy(() -> bed.signed(plan(null), People.BEDSIDE))
        .isInstanceOf(RefusedException.class)
        .hasFieldOrPropertyWithValue("field", "signedBy");
    assertThatThrownBy(
            () -> bed.signed(plan(bed.now.plus(Duration.ofDays(3)).plusMillis(1)), People.CHARGE))
        .hasFieldOrPropertyWithValue("field", "until");
    bed.after(DAY);
    assertThatThrownBy(() -> bed.signed(plan(bed.now), People.CHARGE))
        .hasFieldOrPropertyWithValue("field", "until");
  }

  @Test
  void shouldSuppressASingleInputWithinItsAlteredLimitAndSaySoOnce() {
    bed.signed(limited(), People.CHARGE);

    for (int i = 0; i < 3; i++) {
      bed.see(bed.picture().score(3).input("oxygen-saturation", "90", "%", 3));
      bed.after(DAY.dividedBy(24));
    }

    assertThat(bed.calm()).isTrue();
    assertThat(bed.happenings).filteredOn(Suppressed.class::isInstance).hasSize(1);
  }

  @Test
  void shouldSuppressOnlyThePointsThatTheLimitAccepts() {
    bed.signed(limited(), People.CHARGE);

    bed.see(
        bed.picture()
            .score(8)
            .input("oxygen-saturation", "90", "%", 3)
            .input("heart-rate", "115", "/min", 2));

    assertThat(bed.episode().level()).as("8 less the accepted 3 is 5").isEqualTo(Level.MEDIUM);
    assertThat(bed.episode().reasons().get(0).words()).startsWith("NEWS2 8 at 03:00");
  }

  @Test
  void shouldSpeakUpOutsideTheAlteredLimit() {
    bed.signed(limited(), People.CHARGE);

    bed.see(bed.picture().score(3).input("oxygen-saturation", "87", "%", 3));

    assertThat(bed.calm()).isFalse();
  }

  @Test
  void shouldPutTheStandardBackAtTheVeryEndAndSaySo() {
    bed.signed(limited(), People.CHARGE);
    var end = bed.now.plus(DAY);

    bed.at(end.minusMillis(1)).ranOut(DeadlineKind.CARE_PLAN);
    assertThat(bed.happenings).noneMatch(PlanEnded.class::isInstance);
    bed.at(end).ranOut(DeadlineKind.CARE_PLAN).ranOut(DeadlineKind.CARE_PLAN);
    bed.see(bed.picture().score(3).input("oxygen-saturation", "90", "%", 3));

    assertThat(bed.happenings).filteredOn(PlanEnded.class::isInstance).hasSize(1);
    assertThat(bed.calm()).isFalse();
  }

  @Test
  void shouldCallForWhatNobodyHadSeenWhenTheHoldWasSigned() {
    bed.signed(held(), People.RESPONSE).score(9);

    assertThat(bed.episode().state()).isEqualTo(EpisodeState.OPEN);
    assertThat(bed.episode().owner()).isNull();
  }

  @Test
  void shouldKeepConcernAndCallNobodyWhileHeldOverTheSame() {
    bed.score(9).act(Action.ATTEND, People.RESPONSE);
    bed.act(Action.CLOSE, People.RESPONSE, "going to theatre", null);
    bed.signed(held(), People.RESPONSE).after(Duration.ofMinutes(70)).score(9);

    assertThat(bed.episode().state()).isEqualTo(EpisodeState.HELD);
    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
    assertThat(bed.episode().owner()).isEqualTo(People.RESPONSE.account());
    assertThat(bed.episode().due()).isEqualTo(Bedside.START.plus(Duration.ofHours(2)));
  }

  @Test
  void shouldReopenAHeldEpisodeThatGetsWorseAndKeepItsOwner() {
    bed.score(5).signed(held(), People.RESPONSE).after(Duration.ofMinutes(5)).score(5);
    assertThat(bed.episode().state()).as("the same").isEqualTo(EpisodeState.HELD);

    bed.after(Duration.ofMinutes(5)).score(12);

    assertThat(bed.episode().state()).isEqualTo(EpisodeState.OPEN);
    assertThat(bed.episode().owner()).isEqualTo(People.RESPONSE.account());
    assertThat(bed.kinds()).endsWith("raised");
  }

  @Test
  void shouldCallForAWorryWhateverIsHeld() {
    bed.score(9).signed(held(), People.RESPONSE).worried("please come", People.BEDSIDE);

    assertThat(bed.episode().state()).isEqualTo(EpisodeState.OPEN);
    assertThat(bed.kinds()).endsWith("reopened");
  }

  @Test
  void shouldLowerATotalThatReachesHighByOneLevelAndNoMore() {
    bed.see(everythingAltered()).act(Action.ATTEND, People.RESPONSE);
    bed.act(Action.CLOSE, People.RESPONSE, "known", null);
    bed.signed(plan(everyLimit(), null, null), People.CHARGE).after(DAY.dividedBy(12));

    bed.see(everythingAltered());

    assertThat(bed.episode().level()).as("11, all of it accepted").isEqualTo(Level.MEDIUM);
  }

  @Test
  void shouldTellOfATotalThatIsHigherThanTheSignerSaw() {
    bed.see(bed.picture().score(3).input("oxygen-saturation", "90", "%", 3));
    bed.act(Action.ATTEND, People.CHARGE);
    bed.act(Action.CLOSE, People.CHARGE, "known", null);
    bed.signed(limited(), People.CHARGE).after(DAY.dividedBy(24));

    bed.see(bed.picture().score(3).input("oxygen-saturation", "90", "%", 3));
    assertThat(bed.calm()).as("as signed").isTrue();
    bed.after(DAY.dividedBy(24));
    bed.see(bed.picture().score(5).input("oxygen-saturation", "90", "%", 3));

    assertThat(bed.episode().level()).as("5, of which 2 count").isEqualTo(Level.LOW);
  }

  @Test
  void shouldNeverLetALimitQuietenAnUrgentFinding() {
    bed.signed(limited(), People.CHARGE);

    bed.see(bed.picture().urgent("oxygen-saturation", Level.HIGH, 0));

    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
  }

  @Test
  void shouldJudgeTheNewestPictureAgainWhenThePlanIsOver() {
    bed.signed(plan(everyLimit(), null, null), People.CHARGE);
    bed.see(bed.picture().score(3).input("oxygen-saturation", "90", "%", 3));
    assertThat(bed.calm()).isTrue();

    bed.after(DAY).ranOut(DeadlineKind.CARE_PLAN);

    assertThat(bed.episode().level()).isEqualTo(Level.MEDIUM);
    assertThat(bed.kinds()).containsExactly("opened");
  }

  @Test
  void shouldJudgeTheNewestPictureAgainWhenALimitIsNarrowed() {
    bed.signed(limited(), People.CHARGE);
    bed.see(bed.picture().score(3).input("oxygen-saturation", "90", "%", 3));

    bed.signed(limited(), People.CHARGE);
    assertThat(bed.calm()).as("the same limits").isTrue();
    bed.signed(plan(null), People.CHARGE);

    assertThat(bed.calm()).isFalse();
  }

  @Test
  void shouldNotTakeSetsUnderThePlanForRecoveryAfterIt() {
    bed.signed(limited(), People.CHARGE);
    for (int i = 0; i < 3; i++) {
      bed.after(Duration.ofHours(1));
      bed.see(bed.picture().score(3).input("oxygen-saturation", "90", "%", 3));
    }
    bed.after(DAY).ranOut(DeadlineKind.CARE_PLAN);

    bed.after(Duration.ofMinutes(1)).score(0);

    assertThat(bed.calm()).as("one calm set").isFalse();
  }

  @Test
  void shouldHoldTheRunningEpisodeAndLetItGoWhenLifted() {
    bed.score(9).signed(held(), People.RESPONSE);
    assertThat(bed.episode().state()).isEqualTo(EpisodeState.HELD);

    bed.signed(plan(null), People.RESPONSE);

    assertThat(bed.episode().state()).isEqualTo(EpisodeState.OPEN);
    assertThat(bed.kinds()).containsExactly("opened", "held", "hold-ended");
  }

  @Test
  void shouldNeedASeniorApproverForAlteredLimitsOnly() {
    var agreed = limited();
    var alone = agreed.approved(null, null);

    assertThatThrownBy(() -> bed.signed(alone, People.CHARGE))
        .hasFieldOrPropertyWithValue("field", "approvedBy");
    bed.signed(agreed, People.CHARGE);
    assertThat(bed.course.plan().approvedBy()).isEqualTo("Dr Six");
  }

  @Test
  void shouldSayWhichLimitANewOneReplaces() {
    bed.signed(limited(), People.CHARGE);
    var lower = new Limit("oxygen-saturation", new BigDecimal("86"), null);

    bed.signed(plan(List.of(lower), null, null), People.CHARGE);

    assertThat(bed.course.plan().limit("oxygen-saturation"))
        .isEqualTo(lower.replacing(new BigDecimal("88"), new BigDecimal("100")));
  }

  @Test
  void shouldPutTheStandardBackWhenAPersonEndsThePlan() {
    bed.signed(limited(), People.CHARGE).after(Duration.ofHours(1));

    bed.take(Bedside.ESCALATION.planEnded(bed.course, "recovered", People.CHARGE, bed.now));
    bed.see(bed.picture().score(3).input("oxygen-saturation", "90", "%", 3));

    assertThat(bed.happenings).filteredOn(PlanEnded.class::isInstance).hasSize(1);
    assertThat(bed.calm()).isFalse();
    bed.at(bed.now.plus(DAY)).ranOut(DeadlineKind.CARE_PLAN);
    assertThat(bed.happenings).filteredOn(PlanEnded.class::isInstance).hasSize(1);
  }

  @Test
  void shouldLiftTheHoldWhenAPersonEndsThePlan() {
    bed.score(9).signed(held(), People.RESPONSE).after(Duration.ofMinutes(5));

    bed.take(Bedside.ESCALATION.planEnded(bed.course, "back on the ward", People.CHARGE, bed.now));

    assertThat(bed.episode().state()).isEqualTo(EpisodeState.OPEN);
    assertThatThrownBy(
            () -> Bedside.ESCALATION.planEnded(bed.course, "again", People.CHARGE, bed.now))
        .isInstanceOf(RefusedException.class);
  }

  /** NEWS2 11 of which every point lies within the limits below. */
  private Pictures everythingAltered() {
    return bed.picture()
        .score(11)
        .input("oxygen-saturation", "85", "%", 3)
        .input("respiratory-rate", "26", "/min", 3)
        .input("systolic-pressure", "85", "mm[Hg]", 3)
        .input("heart-rate", "115", "/min", 2);
  }

  private static List<Limit> everyLimit() {
    return List.of(
        new Limit("oxygen-saturation", new BigDecimal("80"), new BigDecimal("100")),
        new Limit("respiratory-rate", new BigDecimal("8"), new BigDecimal("35")),
        new Limit("systolic-pressure", new BigDecimal("80"), new BigDecimal("220")),
        new Limit("heart-rate", new BigDecimal("40"), new BigDecimal("140")));
  }

  private CarePlan plan(@Nullable Instant until) {
    return plan(List.of(), null, until);
  }

  private CarePlan limited() {
    var limit = new Limit("oxygen-saturation", new BigDecimal("88"), new BigDecimal("100"));
    return plan(List.of(limit), null, null);
  }

  private CarePlan held() {
    return plan(List.of(), new Hold("in theatre", bed.now.plus(Duration.ofHours(2))), null);
  }

  private CarePlan plan(List<Limit> limits, @Nullable Hold hold, @Nullable Instant until) {
    var from = Bedside.START;
    return new CarePlan(
            "V-1",
            1,
            1,
            limits,
            null,
            null,
            hold,
            "agreed",
            "-",
            from,
            until == null ? from.plus(DAY) : until)
        .approved("Dr Six", "consultant");
  }
}
