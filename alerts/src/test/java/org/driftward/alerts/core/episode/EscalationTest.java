package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import org.driftward.alerts.People;
import org.driftward.alerts.contract.Episode.Awaiting;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Reason;
import org.driftward.ingest.contract.Level;
import org.junit.jupiter.api.Test;

/**
 * Courses of single patients under the shipped policy. Thresholds of 5 and 7: RCP NEWS2 2017, chart
 * 4. Times: local policy, as the policy file says.
 */
class EscalationTest {

  private static final Duration HALF_HOUR = Duration.ofMinutes(30);
  private static final Duration HOUR = Duration.ofHours(1);

  private final Bedside bed = new Bedside();

  @Test
  void shouldStayCalmBelowEveryTrigger() {
    bed.score(4);

    assertThat(bed.calm()).isTrue();
    assertThat(bed.happenings).isEmpty();
  }

  @Test
  void shouldOpenAtFiveAsMediumAndAtSevenAsHigh() {
    assertThat(new Bedside().score(5).episode().level()).isEqualTo(Level.MEDIUM);
    assertThat(new Bedside().score(6).episode().level()).isEqualTo(Level.MEDIUM);
    assertThat(new Bedside().score(7).episode().level()).isEqualTo(Level.HIGH);
  }

  @Test
  void shouldRiseAtOnceAndCallAgain() {
    bed.score(5).act(Action.ACKNOWLEDGE, People.CHARGE);

    bed.after(HALF_HOUR).score(7);

    assertThat(bed.kinds()).containsExactly("opened", "acknowledged", "raised");
    assertThat(bed.episode().state()).isEqualTo(EpisodeState.OPEN);
    assertThat(bed.episode().owner()).isEqualTo(People.CHARGE.account());
    assertThat(bed.episode().due()).isEqualTo(bed.now.plus(Duration.ofMinutes(5)));
  }

  @Test
  void shouldFallOnlyAfterTwoSetsOverAnHour() {
    bed.score(7).after(HALF_HOUR).score(5);
    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);

    bed.after(HALF_HOUR).score(5);
    assertThat(bed.episode().level()).as("two sets, half an hour").isEqualTo(Level.HIGH);

    bed.after(HALF_HOUR.minusMillis(1)).score(5);
    assertThat(bed.episode().level()).as("a millisecond early").isEqualTo(Level.HIGH);

    bed.after(Duration.ofMillis(1)).score(5);
    assertThat(bed.episode().level()).isEqualTo(Level.MEDIUM);
    assertThat(bed.kinds()).endsWith("lowered");
  }

  @Test
  void shouldNotFlapWhenOneSetIsCalm() {
    bed.score(7);
    for (int i = 0; i < 20; i++) {
      bed.after(HOUR).score(i % 2 == 0 ? 2 : 7);
    }

    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
    assertThat(bed.kinds()).doesNotContain("lowered", "raised", "closed");
  }

  @Test
  void shouldCloseByItselfAfterSustainedRecovery() {
    bed.score(7).after(HOUR).score(1).after(HOUR).score(1);

    assertThat(bed.calm()).isTrue();
    assertThat(bed.episode().closedBecause()).isEqualTo("recovered");
  }

  @Test
  void shouldNotTakeAnIncompleteSetForRecovery() {
    bed.score(7).after(HOUR);
    bed.see(bed.picture().score(1, 7, "temperature", "consciousness")).after(HOUR);
    bed.see(bed.picture().score(1, 7, "temperature", "consciousness"));

    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
  }

  @Test
  void shouldAskForWhatASetLacksAtTheLevelThatItMayReach() {
    bed.see(bed.picture().score(4, 7, "temperature"));

    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
    assertThat(bed.episode().reasons())
        .extracting(Reason::words)
        .containsExactly(
            "NEWS2 4 to 7 at 03:00: it may be 7 or more; measure temperature to settle it");
  }

  @Test
  void shouldAskForWhatASpotCheckLacksAtALowLevel() {
    bed.see(bed.picture().score(4, 7, "temperature").lastSet(bed.now.minus(HOUR)));

    assertThat(bed.episode().level()).isEqualTo(Level.LOW);
  }

  @Test
  void shouldStopAskingOnceItIsMeasured() {
    bed.see(bed.picture().score(4, 7, "temperature")).after(HALF_HOUR).score(4);

    assertThat(bed.calm()).isTrue();
  }

  @Test
  void shouldIgnoreLateAndRepeatedPictures() {
    bed.score(7);
    var before = bed.course;

    bed.see(bed.pictureOf(bed.now.minus(HOUR)).score(0).late());

    assertThat(bed.course.episode()).isEqualTo(before.episode());
    assertThat(bed.kinds()).containsExactly("opened");
  }

  @Test
  void shouldTakeBackWhatARetractedSetRaised() {
    bed.score(1).after(HOUR).score(1).after(HOUR);
    var mistaken = bed.now;
    bed.score(9);
    assertThat(bed.calm()).isFalse();

    bed.after(Duration.ofMinutes(1));
    bed.see(bed.pictureOf(mistaken).withdrawn());
    bed.see(bed.pictureOf(mistaken.minus(HOUR)).score(1));

    assertThat(bed.calm()).isTrue();
  }

  @Test
  void shouldNotCountACorrectedSetTwice() {
    bed.score(7).after(HOUR);
    for (int i = 0; i < 5; i++) {
      bed.score(2);
    }

    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
  }

  @Test
  void shouldCallAgainWhenNobodyReassesses() {
    bed.score(7).act(Action.ATTEND, People.RESPONSE);
    var due = bed.episode().due();
    assertThat(due).isEqualTo(bed.now.plus(HALF_HOUR));

    bed.at(due.minusMillis(1)).ranOut(DeadlineKind.EPISODE);
    assertThat(bed.episode().state()).isEqualTo(EpisodeState.ATTENDED);
    bed.at(due).ranOut(DeadlineKind.EPISODE);

    assertThat(bed.episode().state()).isEqualTo(EpisodeState.OPEN);
    assertThat(bed.episode().owner()).isNull();
    assertThat(bed.kinds()).endsWith("reopened");
  }

  @Test
  void shouldBeQuietAfterAttendanceAndCallAgainIfItGoesOn() {
    bed.score(7).act(Action.ATTEND, People.RESPONSE);
    bed.after(Duration.ofMinutes(20)).score(7);
    assertThat(bed.episode().awaiting()).isEqualTo(Awaiting.REASSESSMENT);
    assertThat(bed.episode().due()).isEqualTo(bed.now.plus(HALF_HOUR));

    bed.after(Duration.ofMinutes(40)).score(7);

    assertThat(bed.kinds()).containsExactly("opened", "attended", "reassessed", "reopened");
  }

  @Test
  void shouldNotBeQuietAboutSomethingNew() {
    bed.score(7).act(Action.ATTEND, People.RESPONSE);

    bed.after(Duration.ofMinutes(10));
    bed.see(bed.picture().score(7).input("respiratory-rate", "26", "/min", 3));

    assertThat(bed.kinds()).endsWith("reopened");
    assertThat(bed.episode().reasons())
        .extracting(Reason::words)
        .contains("Respiratory rate 26 /min at 03:10 scores 3 in NEWS2");
  }

  @Test
  void shouldBeQuietAfterAPersonClosed() {
    bed.score(5).act(Action.ATTEND, People.CHARGE);
    bed.act(Action.CLOSE, People.CHARGE, "known and treated", null);

    bed.after(HOUR).score(5);
    assertThat(bed.calm()).as("the same").isTrue();

    bed.score(7);
    assertThat(bed.calm()).as("worse").isFalse();
    assertThat(bed.episode().id()).isEqualTo("E-V-1-2");
  }

  @Test
  void shouldSpeakAgainWhenTheQuietIsOver() {
    bed.score(5).act(Action.ATTEND, People.CHARGE);
    bed.act(Action.CLOSE, People.CHARGE, "known and treated", null);

    bed.after(Duration.ofHours(2).minusMillis(1)).score(5);
    assertThat(bed.calm()).isTrue();
    bed.after(Duration.ofMillis(1)).score(5);

    assertThat(bed.calm()).isFalse();
  }

  @Test
  void shouldTellALateSetByTheWallClock() {
    bed.score(1);
    var late = bed.now.plus(Duration.ofHours(4)).plusMillis(Math.round(0.33 * 4 * 3_600_000));

    bed.at(late.minusMillis(1)).ranOut(DeadlineKind.OVERDUE);
    assertThat(bed.calm()).isTrue();
    bed.at(late).ranOut(DeadlineKind.OVERDUE).ranOut(DeadlineKind.OVERDUE);

    assertThat(bed.kinds()).containsExactly("opened");
    assertThat(bed.episode().level()).isEqualTo(Level.LOW);
    assertThat(bed.episode().reasons().get(0).words())
        .isEqualTo("No set since 03:00; the next was due at 07:00");
  }

  @Test
  void shouldRaiseAMissedSetAndForgetItOnceItIsDone() {
    bed.score(1).after(Duration.ofHours(7)).ranOut(DeadlineKind.OVERDUE);
    bed.ranOut(DeadlineKind.OVERDUE);
    assertThat(bed.episode().level()).isEqualTo(Level.MEDIUM);

    bed.score(1);

    assertThat(bed.calm()).isTrue();
  }

  @Test
  void shouldTakeAWorryForAReasonByItself() {
    bed.score(0).worried("looks grey", People.BEDSIDE);

    assertThat(bed.episode().level()).isEqualTo(Level.MEDIUM);
    assertThat(bed.episode().reasons().get(0).words())
        .isEqualTo("Nurse One is worried: looks grey");
    bed.after(HOUR).score(0).after(HOUR).score(0).after(HOUR).score(0);
    assertThat(bed.calm()).as("numbers do not lay it to rest").isFalse();
  }

  @Test
  void shouldNotLetABedsideNurseCloseOrHold() {
    bed.score(7).act(Action.ATTEND, People.BEDSIDE);

    assertThat(bed.act(Action.CLOSE, People.BEDSIDE, "fine", null))
        .isInstanceOf(Verdict.NotAllowed.class);
    assertThat(bed.act(Action.ACKNOWLEDGE, People.MANAGER)).isInstanceOf(Verdict.NotAllowed.class);
  }

  @Test
  void shouldAskForAReasonAndAnEnd() {
    bed.score(7).act(Action.ACKNOWLEDGE, People.CHARGE);
    var tomorrow = bed.now.plus(Duration.ofHours(12));

    assertThat(bed.act(Action.CLOSE, People.CHARGE, " ", null))
        .isEqualTo(new Verdict.Incomplete("reason", "says why"));
    assertThat(bed.act(Action.HOLD, People.CHARGE, "scan", bed.now))
        .isEqualTo(new Verdict.Incomplete("until", "is a time in the future"));
    assertThat(bed.act(Action.HOLD, People.CHARGE, "scan", tomorrow.plusMillis(1)))
        .isInstanceOf(Verdict.Incomplete.class);
    assertThat(bed.act(Action.HOLD, People.CHARGE, "scan", tomorrow))
        .isInstanceOf(Verdict.Done.class);
  }

  @Test
  void shouldRunTheClockAgainWhenTheHoldEnds() {
    bed.score(7);
    bed.act(Action.HOLD, People.CHARGE, "scan", bed.now.plus(HALF_HOUR));

    bed.after(HALF_HOUR).ranOut(DeadlineKind.EPISODE);

    assertThat(bed.kinds()).endsWith("hold-ended");
    assertThat(bed.episode().awaiting()).isEqualTo(Awaiting.ACKNOWLEDGEMENT);
  }
}
