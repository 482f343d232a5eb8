package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.scoring.core.change.Course.START;

import java.time.Duration;
import java.time.Instant;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.scoring.contract.Plain;
import org.driftward.scoring.policy.PolicyFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Trend and projection under the shipped policy: p below 0.01, a window of 24 hours. */
class TrendTest {

  private final ChangeDetector detector =
      new ChangeDetector(Catalogue.shipped(), PolicyFile.shipped());

  private Course heartRate() {
    return Course.of(detector, "heart-rate", "/min");
  }

  @Test
  void shouldSayNothingOnFewerThanFiveValues() {
    assertThat(heartRate().hourly(80, 84, 88, 92).trend(null, null)).isEmpty();
    assertThat(heartRate().hourly(80, 84, 88, 92, 96).trend(null, null)).isPresent();
  }

  /** Sen 1968: 7 values unevenly spaced, slope 4, S = 21, exact two-sided p = 2/5040. */
  @Test
  void shouldFollowThePublishedExampleWithUnevenSpacing() {
    var course = heartRate();
    int[] hours = {1, 2, 3, 4, 10, 12, 18};
    double[] values = {9, 15, 19, 20, 45, 55, 78};
    for (int i = 0; i < hours.length; i++) {
      course.at(START.plus(Duration.ofHours(hours[i])), values[i]);
    }

    var trend = course.trend(null, null).orElseThrow();

    assertThat(trend.perHour()).isCloseTo(4, within(1e-12));
    assertThat(trend.s()).isEqualTo(21);
    assertThat(trend.pValue()).isCloseTo(2 / 5040.0, within(1e-12));
    assertThat(trend.sets()).isEqualTo(7);
    assertThat(trend.from()).isEqualTo(START.plus(Duration.ofHours(1)));
    assertThat(trend.significant()).isTrue();
  }

  @Test
  void shouldProjectWhenTheNextThresholdIsReached() {
    var trend = heartRate().hourly(80, 82, 84, 86, 88, 90, 92, 94).trend(111.0, 50.0).orElseThrow();

    var newest = START.plus(Duration.ofHours(7));
    assertThat(trend.threshold()).isEqualTo(111);
    assertThat(trend.projectedCrossing()).isEqualTo(newest.plus(Duration.ofMinutes(510)));
    assertThat(trend.earliest()).isEqualTo(trend.projectedCrossing());
    assertThat(trend.latest()).isEqualTo(trend.projectedCrossing());
    assertThat(trend.words("Heart rate", newest))
        .isEqualTo(
            "Heart rate rises by 2 per hour (8 values in 7 h, more than chance, p below 0.0001); if this goes"
                + " on, 111 is reached in about 8 h 30 min, between 8 h 30 min and 8 h 30 min");
  }

  @Test
  void shouldWidenTheIntervalWithTheScatter() {
    var trend = heartRate().hourly(80, 83, 84, 87, 88, 91, 92, 95).trend(111.0, 50.0).orElseThrow();

    assertThat(trend.significant()).isTrue();
    assertThat(trend.earliest()).isBefore(trend.projectedCrossing());
    assertThat(trend.latest()).isAfter(trend.projectedCrossing());
  }

  /** Three of 28 slopes fall; the lower end of the 99 % interval is the third. */
  @Test
  void shouldLeaveTheIntervalOpenWhereItsShallowEndDoesNotLeadThere() {
    var trend = heartRate().hourly(80, 83, 82, 87, 86, 91, 90, 95).trend(111.0, 50.0).orElseThrow();

    assertThat(trend.significant()).isTrue();
    assertThat(trend.earliest()).isBefore(trend.projectedCrossing());
    assertThat(trend.latest()).isNull();
    assertThat(trend.words("Heart rate", START.plus(Duration.ofHours(7))))
        .contains("more than chance")
        .contains(", not before ");
  }

  @Test
  void shouldProjectDownwardsToTheLowerThreshold() {
    var trend = heartRate().hourly(94, 92, 90, 88, 86, 84, 82, 80).trend(111.0, 50.0).orElseThrow();

    assertThat(trend.threshold()).isEqualTo(50);
    // 30 beats at 2 an hour are 15 hours: beyond the horizon of 12.
    assertThat(trend.projectedCrossing()).isNull();

    var steeper =
        heartRate().hourly(94, 91, 88, 85, 82, 79, 76, 73).trend(111.0, 50.0).orElseThrow();
    assertThat(steeper.projectedCrossing())
        .isEqualTo(START.plus(Duration.ofHours(7)).plusSeconds(27600));
  }

  @Test
  void shouldProjectUpToTheHorizonExactly() {
    var course = heartRate().hourly(80, 82, 84, 86, 88, 90, 92, 94);

    assertThat(course.trend(118.0, null).orElseThrow().projectedCrossing())
        .isEqualTo(START.plus(Duration.ofHours(19)));
    assertThat(course.trend(118.01, null).orElseThrow().projectedCrossing()).isNull();
  }

  @Test
  void shouldNotProjectWithoutSignificance() {
    // S = 10 of 10 for five values: p = 1/60, mentioned but not below 0.01.
    var trend = heartRate().hourly(80, 84, 88, 92, 96).trend(111.0, 50.0).orElseThrow();

    assertThat(trend.pValue()).isCloseTo(1 / 60.0, within(1e-12));
    assertThat(trend.significant()).isFalse();
    assertThat(trend.projectedCrossing()).isNull();
    assertThat(trend.words("Heart rate", START.plus(Duration.ofHours(4))))
        .isEqualTo("Heart rate rises by 4 per hour (5 values in 4 h, may be chance, p 0.0167)");
  }

  @Test
  void shouldNotProjectAThresholdThatLiesBehind() {
    var course = heartRate().hourly(80, 82, 84, 86, 88, 90, 92, 94);

    assertThat(course.trend(94.0, null).orElseThrow().projectedCrossing()).isNull();
    assertThat(course.trend(90.0, null).orElseThrow().projectedCrossing()).isNull();
    assertThat(course.trend(null, 50.0).orElseThrow().threshold()).isNull();
  }

  /** The level now is the line's, not the newest value's; it may have passed the threshold. */
  @Test
  void shouldProjectTheCrossingForNowWhenTheLineHasPassedTheThreshold() {
    var trend = heartRate().hourly(80, 83, 86, 89, 92, 95, 98, 98).trend(100.0, null).orElseThrow();

    assertThat(trend.projectedCrossing()).isEqualTo(START.plus(Duration.ofHours(7)));
  }

  @Test
  void shouldNotMentionASlopeThatChanceExplains() {
    assertThat(heartRate().hourly(80, 84, 79, 83, 81, 82, 80, 83).trend(111.0, 50.0)).isEmpty();
    assertThat(heartRate().hourly(80, 80, 80, 80, 80, 80, 80).trend(111.0, 50.0)).isEmpty();
  }

  @Test
  void shouldLookBackOverTheWindowToTheMillisecond() {
    Instant end = START.plus(Duration.ofHours(24));

    var inside = heartRate().hourly(80, 82, 84, 86, 88, 90).at(end, 92);
    var outside = heartRate().hourly(80, 82, 84, 86, 88, 90).at(end.plusMillis(1), 92);

    assertThat(inside.trend(null, null).orElseThrow().sets()).isEqualTo(7);
    assertThat(outside.trend(null, null).orElseThrow().sets()).isEqualTo(6);
  }

  @Test
  void shouldKeepNoMoreThanTheNewestPoints() {
    var course = heartRate();
    for (int i = 0; i < 20; i++) {
      course.at(START.plus(Duration.ofMinutes(30L * i)), 60 + i);
    }

    var trend = course.trend(null, null).orElseThrow();
    assertThat(trend.sets()).isEqualTo(16);
    assertThat(trend.from()).isEqualTo(START.plus(Duration.ofHours(2)));
  }

  @Test
  void shouldLetTheNewestOfABurstStandForIt() {
    var course = heartRate().hourly(80);
    course.at(START.plusSeconds(60), 90).at(START.plusSeconds(120), 95);

    assertThat(course.state().window().size()).isEqualTo(2);
    assertThat(course.state().window().value(1)).isEqualTo(95);
  }

  @Test
  void shouldTakeTheSecondOfTwoValuesOfOneMoment() {
    var course = heartRate().at(START, 80).at(START, 90);

    assertThat(course.state().window().size()).isEqualTo(1);
    assertThat(course.state().window().value(0)).isEqualTo(90);
  }

  @ParameterizedTest
  @CsvSource({
    "2,2",
    "0.25,0.25",
    "-1.4,1.4",
    "0.1234,0.12",
    "0.0421,0.042",
    "0.00417,0.0042",
    "0.000019,0.000019",
    "12.345,12.34",
    "0,0"
  })
  void shouldShowEnoughDigitsOfASlowChange(double perHour, String shown) {
    assertThat(Plain.rate(perHour)).isEqualTo(shown);
  }

  /** Two values a whole spacing apart are no burst: the next one stands beside them. */
  @Test
  void shouldKeepWhatStandsAWholeSpacingApart() {
    var course = heartRate();
    course.at(START, 80).at(START.plus(Duration.ofMinutes(15)), 82);
    course.at(START.plus(Duration.ofMinutes(16)), 84);

    assertThat(course.state().window().size()).isEqualTo(3);
  }
}
