package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;

import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.alerts.People;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.alerts.contract.Reason;
import org.driftward.ingest.contract.Encounter;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Patient;
import org.driftward.ingest.contract.Stay;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;

/** Comings, goings and mistakes: nothing gets lost by them, and nothing of them stays. */
class JudgedAgainTest {

  private static final Duration HOUR = Duration.ofHours(1);

  private final Bedside bed = new Bedside();

  @Test
  void shouldOpenAgainWhenADischargeIsTakenBack() {
    bed.moved(encounter(1, null)).score(9);
    bed.moved(encounter(2, bed.now)).after(HOUR);
    assertThat(bed.episode().closedBecause()).isEqualTo("discharged");

    bed.moved(encounter(3, null));

    assertThat(bed.episode().state()).isEqualTo(EpisodeState.OPEN);
    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
    assertThat(bed.kinds()).containsExactly("opened", "closed", "opened");
  }

  @Test
  void shouldJudgeWhatWasTakenMeanwhileWhenADischargeIsTakenBack() {
    bed.moved(encounter(1, null)).score(1).moved(encounter(2, bed.now));
    bed.after(HOUR).score(9);
    assertThat(bed.calm()).isTrue();

    bed.moved(encounter(3, null));

    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
  }

  @Test
  void shouldNotForgetAWorryBecauseOfADischargeThatWasAMistake() {
    bed.moved(encounter(1, null)).score(0).worried("looks grey", People.BEDSIDE);

    bed.moved(encounter(2, bed.now)).moved(encounter(3, null));

    assertThat(bed.episode().reasons()).extracting(Reason::rule).containsExactly("worry");
  }

  @Test
  void shouldTakeWhatAWithdrawnSetRaisedWithItAtOnce() {
    bed.score(1).after(HOUR);
    var mistaken = bed.now;
    bed.score(9).act(Action.ATTEND, People.CHARGE);

    bed.after(Duration.ofMinutes(1)).see(bed.pictureOf(mistaken).withdrawn());

    assertThat(bed.calm()).isTrue();
    assertThat(bed.episode().closedBecause()).isEqualTo("entered in error");
  }

  @Test
  void shouldTakeWhatACorrectionNoLongerSaysBackAtOnce() {
    bed.score(9);

    bed.see(bed.pictureOf(Bedside.START).score(1));

    assertThat(bed.episode().closedBecause()).isEqualTo("entered in error");
  }

  @Test
  void shouldKeepWhatAnEarlierSetRaisedAsWell() {
    bed.score(7).after(HOUR);
    var mistaken = bed.now;
    bed.score(9).after(HOUR);

    bed.see(bed.pictureOf(mistaken).withdrawn()).see(bed.pictureOf(Bedside.START).score(7));

    assertThat(bed.calm()).isFalse();
    assertThat(bed.episode().reasons().get(0).words()).contains("NEWS2 7 at 03:00");
  }

  /** Another patient's numbers, answered, must not keep this patient's quiet. */
  @Test
  void shouldNotStayQuietOverWhatAWithdrawnSetShowed() {
    var mistaken = bed.now;
    bed.score(12).act(Action.ATTEND, People.CHARGE);
    bed.act(Action.CLOSE, People.CHARGE, "treated", null);
    bed.see(bed.pictureOf(mistaken).withdrawn());

    bed.after(Duration.ofMinutes(10)).score(9);

    assertThat(bed.calm()).isFalse();
  }

  /** Six hours: {@code back-entry} of the shipped policy, an engineering choice, no source. */
  @Test
  void shouldTellOfALateEntryAtOnceWhenTheNextSetWasDueLongAgo() {
    bed.see(bed.pictureOf(bed.now.minus(Duration.ofHours(6)).minusMillis(1)).score(9));

    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
    assertThat(bed.episode().reasons().get(0).words()).contains("entered late, taken 20:59");
  }

  @Test
  void shouldTellOfALateEntryWithTheSetThatIsMissingThen() {
    var taken = bed.now.minus(Duration.ofHours(7));
    bed.see(bed.pictureOf(taken).score(9).interval(Duration.ofHours(8)));
    assertThat(bed.calm()).as("the next set is still to come").isTrue();

    bed.at(taken.plus(Duration.ofHours(11))).ranOut(DeadlineKind.OVERDUE);

    assertThat(bed.episode().level()).isEqualTo(Level.HIGH);
    assertThat(bed.episode().reasons())
        .extracting(Reason::rule)
        .containsExactly("score-news2", "overdue");
  }

  /** NICE CG50: observations on admission. One hour: {@code first-set}, local policy. */
  @Test
  void shouldMissTheFirstSetFromAdmissionOn() {
    bed.moved(encounter(1, null));
    var late = Bedside.START.plus(HOUR).plusMillis(Math.round(0.33 * 3_600_000));

    bed.at(late.minusMillis(1)).ranOut(DeadlineKind.OVERDUE);
    assertThat(bed.calm()).isTrue();
    bed.at(late).ranOut(DeadlineKind.OVERDUE);

    assertThat(bed.episode().reasons().get(0).words())
        .isEqualTo("No set since admission; the first was due at 04:00");
  }

  @Test
  void shouldLeaveTheSetsOfAnAdmissionOfLongAgoTheTimeToArrive() {
    bed.after(Duration.ofDays(5)).moved(encounter(1, null)).ranOut(DeadlineKind.OVERDUE);
    assertThat(bed.calm()).isTrue();

    bed.after(Duration.ofMinutes(20)).ranOut(DeadlineKind.OVERDUE);

    assertThat(bed.calm()).as("a third of the hour").isFalse();
  }

  @Test
  void shouldGoOnMissingTheFirstSetThroughMovesAndSpotChecks() {
    bed.moved(encounter(1, null)).after(HOUR).moved(encounter(2, null));

    bed.see(bed.picture().score(1).unscheduled()).after(HOUR).ranOut(DeadlineKind.OVERDUE);

    assertThat(bed.calm()).isFalse();
  }

  @Test
  void shouldNotForgetAMissingSetBecauseSomebodyClosed() {
    bed.score(1).after(Duration.ofHours(7));
    bed.ranOut(DeadlineKind.OVERDUE).ranOut(DeadlineKind.OVERDUE);
    bed.act(Action.ATTEND, People.CHARGE);
    bed.act(Action.CLOSE, People.CHARGE, "asleep", null);

    bed.after(Duration.ofHours(4)).ranOut(DeadlineKind.OVERDUE);

    assertThat(bed.calm()).isFalse();
  }

  @Test
  void shouldNotTakeTheSurvivorsCalmForRecoveryFromWhatCameByAMerge() {
    var survivor = new Bedside();
    survivor.course = Course.begin("V-2");
    survivor.score(0).after(HOUR).score(0).after(HOUR).score(0);
    bed.at(survivor.now).moved(encounter(1, null)).score(9);
    for (var decision :
        Bedside.ESCALATION.merged(bed.course, survivor.course, merged(2), bed.now)) {
      (decision.course().encounter().equals("V-1") ? bed : survivor).take(decision);
    }

    survivor.after(Duration.ofMinutes(10)).score(0);

    assertThat(survivor.calm()).isFalse();
    assertThat(survivor.episode().level()).isEqualTo(Level.HIGH);
  }

  private static Encounter encounter(long version, @Nullable Instant discharged) {
    return encounter(version, discharged, null);
  }

  private static Encounter merged(long version) {
    return encounter(version, null, "V-2");
  }

  private static Encounter encounter(
      long version, @Nullable Instant discharged, @Nullable String into) {
    return new Encounter(
        "V-1",
        new Patient("P-1", null, null, null),
        List.of(new Stay("LINDEN", "1", Bedside.START)),
        Bedside.START,
        discharged,
        into,
        version);
  }
}
