package org.driftward.alerts.core.episode;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import org.driftward.alerts.People;
import org.driftward.alerts.Pictures;
import org.driftward.alerts.contract.EpisodeDesk.Action;
import org.driftward.alerts.contract.EpisodeState;
import org.driftward.ingest.contract.CatalogueEntry.Group;
import org.driftward.ingest.contract.Level;
import org.driftward.ingest.contract.Side;
import org.driftward.scoring.contract.ChangedFinding;
import org.driftward.scoring.contract.Scalar;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;

/**
 * Whoever answered, in whatever way, answered what stood then. What is worse by a step calls again;
 * the same does not. Which step counts is the catalogue's, or our choice, no source.
 */
class WorseTest {

  private static final Duration MINUTES = Duration.ofMinutes(5);

  private final Bedside bed = new Bedside();

  /** Every way of answering. */
  private enum Answer {
    ACKNOWLEDGED,
    ATTENDED,
    HELD,
    CLOSED;

    void give(Bedside bed) {
      switch (this) {
        case ACKNOWLEDGED -> bed.act(Action.ACKNOWLEDGE, People.CHARGE);
        case ATTENDED -> bed.act(Action.ATTEND, People.CHARGE);
        case HELD -> bed.act(Action.HOLD, People.CHARGE, "scan", bed.now.plusSeconds(7200));
        case CLOSED -> {
          bed.act(Action.ATTEND, People.CHARGE);
          bed.act(Action.CLOSE, People.CHARGE, "known and treated", null);
        }
      }
    }
  }

  @ParameterizedTest
  @EnumSource
  void shouldCallForMorePointsOfTheSameLevel(Answer answer) {
    bed.score(7);
    answer.give(bed);
    bed.after(MINUTES).score(7);
    assertThat(calls()).as("the same").isFalse();

    bed.after(MINUTES).score(12);

    assertThat(calls()).isTrue();
  }

  @ParameterizedTest
  @EnumSource
  void shouldCallForAValueThatFallsWithinItsBand(Answer answer) {
    bed.see(saturation("91"));
    answer.give(bed);
    bed.after(MINUTES).see(saturation("90"));
    assertThat(calls()).as("within three times the noise").isFalse();

    bed.after(MINUTES).see(saturation("65"));

    assertThat(calls()).isTrue();
  }

  @ParameterizedTest
  @EnumSource
  void shouldCallForAWordThatIsWorseThoughItScoresTheSame(Answer answer) {
    bed.see(bed.picture().score(3).word("consciousness", "voice", 3));
    answer.give(bed);

    bed.after(MINUTES);
    bed.see(bed.picture().score(3).word("consciousness", "unresponsive", 3));

    assertThat(calls()).isTrue();
  }

  @ParameterizedTest
  @EnumSource
  void shouldCallForTheOtherSide(Answer answer) {
    bed.see(bed.picture().changed(noPulse(Side.LEFT)));
    answer.give(bed);
    bed.after(MINUTES).see(bed.picture().changed(noPulse(Side.LEFT)));
    assertThat(calls()).as("the same foot").isFalse();

    bed.after(MINUTES);
    bed.see(bed.picture().changed(noPulse(Side.LEFT)).changed(noPulse(Side.RIGHT)));

    assertThat(calls()).isTrue();
  }

  @ParameterizedTest
  @EnumSource
  void shouldCallForAnUrgentFindingAndForMoreOfIt(Answer answer) {
    bed.see(bed.picture().score(1).urgent("stridor", Level.MEDIUM, 0));
    answer.give(bed);
    bed.after(MINUTES).see(bed.picture().score(1).urgent("stridor", Level.MEDIUM, 0.5));
    assertThat(calls()).as("less than a step").isFalse();

    bed.after(MINUTES).see(bed.picture().score(1).urgent("stridor", Level.MEDIUM, 1));

    assertThat(calls()).isTrue();
  }

  @ParameterizedTest
  @EnumSource
  void shouldCallForAWorryEveryTimeItIsSaid(Answer answer) {
    bed.see(bed.picture().score(1).urgent("family-concern", Level.MEDIUM, 0));
    answer.give(bed);
    var said = bed.now;
    bed.after(MINUTES).see(bed.picture().score(1).urgent("family-concern", Level.MEDIUM, 0, said));
    assertThat(calls()).as("said before").isFalse();

    bed.after(MINUTES).see(bed.picture().score(1).urgent("family-concern", Level.MEDIUM, 0));
    assertThat(calls()).as("said again").isTrue();

    answer.give(bed);
    bed.after(MINUTES).worried("please come", People.BEDSIDE);
    assertThat(calls()).as("said by one touch").isTrue();
  }

  @ParameterizedTest
  @EnumSource
  void shouldCallAgainAfterWhoeverCameSawLess(Answer answer) {
    bed.score(9).after(MINUTES).score(5);
    answer.give(bed);

    bed.after(MINUTES).score(8);

    assertThat(calls()).isTrue();
  }

  @Test
  void shouldTellWhoeverIsToldAlreadyAgainOfAWorry() {
    bed.score(7).after(MINUTES).worried("looks grey", People.BEDSIDE);

    assertThat(bed.kinds()).containsExactly("opened", "called-again");
  }

  @Test
  void shouldOnlyShowAHintToWhoeverIsThere() {
    bed.score(5).act(Action.ATTEND, People.CHARGE);
    var hint =
        new ChangedFinding(
            "wheeze",
            null,
            null,
            Scalar.of("none"),
            Scalar.of("mild"),
            bed.now,
            Group.BREATHING,
            "new wheeze");

    bed.after(MINUTES).see(bed.picture().score(5).changed(hint));

    assertThat(bed.episode().state()).isEqualTo(EpisodeState.ATTENDED);
    assertThat(bed.episode().reasons()).extracting(r -> r.rule()).contains("changed-breathing");
  }

  @Test
  void shouldKeepWhoeverHeldItAsTheOwner() {
    bed.score(7);
    Answer.HELD.give(bed);

    bed.after(MINUTES).score(8);

    assertThat(bed.episode().owner()).isEqualTo(People.CHARGE.account());
    assertThat(bed.kinds()).endsWith("reopened");
  }

  /** Nobody who stands ready is told to wait: the alarm sounds, or the ladder climbs. */
  private boolean calls() {
    return !bed.calm() && bed.episode().state() == EpisodeState.OPEN;
  }

  private Pictures saturation(String value) {
    return bed.picture().score(3).input("oxygen-saturation", value, "%", 3);
  }

  private ChangedFinding noPulse(Side side) {
    return new ChangedFinding(
        "dorsalis-pedis-pulse",
        null,
        side,
        Scalar.of(BigDecimal.valueOf(2)),
        Scalar.of(BigDecimal.ZERO),
        bed.now,
        Group.LIMB_CIRCULATION,
        side.word() + " foot pulse gone");
  }
}
