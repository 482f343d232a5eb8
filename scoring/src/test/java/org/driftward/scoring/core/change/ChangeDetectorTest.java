package org.driftward.scoring.core.change;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.scoring.core.change.Course.START;

import java.time.Duration;
import java.time.Instant;
import org.driftward.ingest.contract.Catalogue;
import org.driftward.ingest.contract.FindingKey;
import org.driftward.ingest.contract.FindingValue;
import org.driftward.scoring.core.Reading;
import org.driftward.scoring.policy.PolicyFile;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** The quiet period and drift. Values are invented; the shipped policy and catalogue rule. */
class ChangeDetectorTest {

  private static final Duration MILLI = Duration.ofMillis(1);

  private final ChangeDetector detector =
      new ChangeDetector(Catalogue.shipped(), PolicyFile.shipped());

  private Course heartRate() {
    return Course.of(detector, "heart-rate", "/min");
  }

  @Test
  void shouldHaveNoBaselineOnFewerThanFiveValues() {
    var course = heartRate().hourly(80, 82, 78, 81, 79);

    assertThat(course.drift()).isEmpty();
    assertThat(course.hourly(80).drift()).isPresent();
  }

  @Test
  void shouldMeasureDriftInThePatientsOwnSpread() {
    var drift = heartRate().hourly(80, 90, 70, 86, 74).hourly(98).drift().orElseThrow();

    assertThat(drift.baseline()).isEqualTo(80);
    assertThat(drift.spread()).isCloseTo(1.4826 * 6, within(1e-12));
    assertThat(drift.drift()).isCloseTo(18 / (1.4826 * 6), within(1e-12));
    assertThat(drift.sets()).isEqualTo(5);
    assertThat(drift.from()).isEqualTo(START);
    assertThat(drift.until()).isEqualTo(START.plus(Duration.ofHours(4)));
    assertThat(drift.worse()).isFalse();
  }

  /** Half of charted rates are equal: the spread of the values is 0, that of measuring is not. */
  @Test
  void shouldNotFallBelowTheMeasuringNoise() {
    var drift = heartRate().hourly(80, 80, 80, 80, 80).hourly(88).drift().orElseThrow();

    assertThat(drift.spread()).isEqualTo(4);
    assertThat(drift.drift()).isEqualTo(2);
  }

  @Test
  void shouldCallDriftWorseFromTheLimitOn() {
    assertThat(heartRate().hourly(80, 80, 80, 80, 80).hourly(93.9).drift().orElseThrow().worse())
        .isFalse();
    assertThat(heartRate().hourly(80, 80, 80, 80, 80).hourly(94).drift().orElseThrow().worse())
        .isTrue();
    assertThat(heartRate().hourly(80, 80, 80, 80, 80).hourly(66).drift().orElseThrow().worse())
        .isTrue();
  }

  @Test
  void shouldNotCallARiseOfSaturationWorse() {
    var course = Course.of(detector, "oxygen-saturation", "%").hourly(94, 94, 94, 94, 94);

    assertThat(course.hourly(99).drift().orElseThrow().worse()).isFalse();
    assertThat(course.hourly(90).drift().orElseThrow().worse()).isTrue();
  }

  @Test
  void shouldNeverJudgeAValueByABaselineThatHoldsIt() {
    var drift = heartRate().hourly(80, 80, 80, 80, 80, 84).drift().orElseThrow();

    assertThat(drift.sets()).isEqualTo(5);
    assertThat(drift.until()).isEqualTo(START.plus(Duration.ofHours(4)));
  }

  @Test
  void shouldLeaveDriftedValuesOutOfTheBaseline() {
    var drift = heartRate().hourly(80, 80, 80, 80, 80, 120, 120, 120, 120).drift().orElseThrow();

    assertThat(drift.sets()).isEqualTo(5);
    assertThat(drift.baseline()).isEqualTo(80);
  }

  @Test
  void shouldCloseTheQuietPeriodAtItsMostValues() {
    var course = heartRate().hourly(80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80);

    var drift = course.hourly(84, 84, 84).drift().orElseThrow();

    assertThat(drift.sets()).isEqualTo(12);
    assertThat(course.state().quiet()).isInstanceOf(Settled.class);
  }

  @Test
  void shouldTakeValuesUntilTheLastMillisecondOfTheQuietPeriod() {
    var end = START.plus(Duration.ofHours(24));

    var inside = heartRate().hourly(80, 80, 80, 80, 80).at(end.minus(MILLI), 84).at(end, 84);
    var outside = heartRate().hourly(80, 80, 80, 80, 80).at(end, 84).at(end.plus(MILLI), 84);

    assertThat(inside.drift().orElseThrow().sets()).isEqualTo(6);
    assertThat(outside.drift().orElseThrow().sets()).isEqualTo(5);
  }

  @Test
  void shouldWaitForEnoughValuesHoweverLongItTakes() {
    var course = heartRate();
    for (int day = 0; day < 5; day++) {
      course.at(START.plus(Duration.ofDays(day)), 80);
    }

    var drift = course.at(START.plus(Duration.ofDays(5)), 84).drift().orElseThrow();

    assertThat(drift.sets()).isEqualTo(5);
    assertThat(drift.drift()).isEqualTo(1);
  }

  @Test
  void shouldBeginAnewAfterADocumentedChange() {
    var course = heartRate().hourly(80, 80, 80, 80, 80, 80).restart().hourly(100, 100, 100, 100);

    assertThat(course.drift()).isEmpty();

    var drift = course.hourly(100, 100).drift().orElseThrow();
    assertThat(drift.baseline()).isEqualTo(100);
    assertThat(drift.from()).isEqualTo(START.plus(Duration.ofHours(6)));
    assertThat(drift.accumulated()).isZero();
  }

  @Test
  void shouldTakeAReadingOfTheSameMillisecondAfterTheRestart() {
    var course = heartRate().hourly(80, 80, 80, 80, 80, 80);
    var last = START.plus(Duration.ofHours(5));

    var state = course.state().restarted(last);

    var next = reading(last, "90");
    assertThat(detector.series(next).advance(state, next).newest()).isEqualTo(last.toEpochMilli());
    assertThatThrownBy(() -> course.state().restarted(last.minus(MILLI)))
        .isInstanceOf(IllegalArgumentException.class);
  }

  @Test
  void shouldKeepTheTrendOverARestart() {
    var course = heartRate().hourly(80, 82, 84, 86, 88, 90, 92).restart().hourly(94);

    assertThat(course.trend(null, null).orElseThrow().perHour()).isEqualTo(2);
  }

  /** Came in with 120, settled at 80; then 120 is drift again, not the usual. */
  @Test
  void shouldTakeTheRecoveredStateForTheBaselineOfAPatientWhoCameInUnwell() {
    var course = heartRate().hourly(120, 121, 119, 120, 122, 118);

    assertThat(course.hourly(80).drift().orElseThrow().worse()).isFalse();

    var drift = course.hourly(82, 78, 80, 81, 80).hourly(120).drift().orElseThrow();
    assertThat(drift.baseline()).isEqualTo(80);
    assertThat(drift.worse()).isTrue();
  }

  @Test
  void shouldCallOvershootingRecoveryWorse() {
    var course = heartRate().hourly(120, 121, 119, 120, 122);

    assertThat(course.hourly(51).drift().orElseThrow().worse()).isFalse();
    assertThat(course.hourly(50).drift().orElseThrow().worse()).isTrue();
  }

  /** Two spreads up, again and again, never pass the limit of 3.5; the sum does. */
  @Test
  void shouldCatchSmallDriftThatGoesOn() {
    var course = heartRate().hourly(80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80);

    course.hourly(88, 88, 88, 88);
    assertThat(course.drift().orElseThrow().accumulated()).isEqualTo(4);
    assertThat(course.drift().orElseThrow().worse()).isFalse();

    course.hourly(88);
    assertThat(course.drift().orElseThrow().accumulated()).isEqualTo(5);
    assertThat(course.drift().orElseThrow().worse()).isTrue();
  }

  @Test
  void shouldNotTakeOneWrongReadingForALastingShift() {
    var course = heartRate().hourly(80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80).hourly(300);

    assertThat(course.drift().orElseThrow().accumulated()).isEqualTo(2.5);
    assertThat(course.hourly(80).drift().orElseThrow().worse()).isFalse();
  }

  @Test
  void shouldForgetAShiftSoonAfterThePatientReturns() {
    var course = heartRate().hourly(80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80, 80);

    course.hourly(100, 100, 100, 100, 100, 100, 100, 100);
    assertThat(course.drift().orElseThrow().accumulated()).isEqualTo(5);
    assertThat(course.hourly(80).drift().orElseThrow().worse()).isFalse();
  }

  @Test
  void shouldShowDriftDownwardsWithItsSign() {
    var drift = heartRate().hourly(80, 80, 80, 80, 80).hourly(72, 72).drift().orElseThrow();

    assertThat(drift.drift()).isEqualTo(-2);
    assertThat(drift.accumulated()).isEqualTo(-2);
  }

  /** A monitor's minute-by-minute stream is not sixty sets an hour. */
  @Test
  void shouldCountABurstOfValuesOnce() {
    var course = heartRate();
    for (int minute = 0; minute < 61; minute++) {
      course.at(START.plus(Duration.ofMinutes(minute)), 80);
    }

    assertThat(course.drift()).isEmpty();
    assertThat(course.state().window().size()).isLessThanOrEqualTo(5);
  }

  @Test
  void shouldCountAValueFromTheSpacingOn() {
    var spacing = Duration.ofMinutes(15);
    var early = heartRate().at(START, 80).at(START.plus(spacing).minus(MILLI), 80);
    var late = heartRate().at(START, 80).at(START.plus(spacing), 80);

    assertThat(early.state().counted()).isEqualTo(START.toEpochMilli());
    assertThat(late.state().counted()).isEqualTo(START.plus(spacing).toEpochMilli());
  }

  @Test
  void shouldRefuseToGoBackInTime() {
    var course = heartRate().hourly(80);

    assertThatThrownBy(() -> course.at(START.minus(MILLI), 80))
        .isInstanceOf(IllegalArgumentException.class)
        .hasMessageNotContaining("80");
  }

  @Test
  void shouldLeaveAValueOfAnotherKindOutOfTheSeries() {
    var state = heartRate().hourly(80, 82).state();
    var word =
        new Reading(
            FindingKey.of("heart-rate"),
            new FindingValue.Coded("fast"),
            START.plus(Duration.ofHours(3)),
            "a");

    assertThat(detector.series(word).advance(state, word)).isSameAs(state);
    assertThat(detector.series(word).drift(state, word)).isEmpty();
  }

  @Test
  void shouldKeepTheTrendAndTheLevelOfAScore() {
    var course = Course.of(detector, "news2", ChangeDetector.SCORE_UNIT).hourly(1, 2, 3, 4, 5, 6);

    assertThat(course.trend(7.0, null).orElseThrow().perHour()).isEqualTo(1);
    assertThat(course.drift()).isEmpty();
    assertThat(course.changed()).isEmpty();
    assertThat(detector.recentLevel(course.state(), course.now().minus(Duration.ofHours(1))))
        .hasValueSatisfying(level -> assertThat(level).isEqualByComparingTo("3"));
    assertThat(detector.recentLevel(course.state(), START.plus(Duration.ofHours(1)))).isEmpty();
  }

  private static Reading reading(Instant at, String value) {
    return new Reading(
        FindingKey.of("heart-rate"),
        new FindingValue.Quantity(new java.math.BigDecimal(value), "/min"),
        at,
        "a");
  }

  /** The edges of the expected range belong to it: RCP NEWS2 2017, zero-point band 51 to 90. */
  @Test
  void shouldTakeAPatientAtTheEdgesOfTheExpectedRangeForWell() {
    for (double edge : new double[] {51, 90}) {
      var course = heartRate().hourly(edge, edge, edge, edge, edge, edge);
      assertThat(course.hourly(70, 70, 70, 70, 70, 70).drift().orElseThrow().baseline())
          .isEqualTo(edge);
      var recovered = heartRate().hourly(120, 120, 120, 120, 120, 120);
      assertThat(recovered.hourly(edge, edge, edge, edge, edge, 70).drift().orElseThrow())
          .satisfies(drift -> assertThat(drift.baseline()).isEqualTo(edge));
    }
    var justOutside = heartRate().hourly(120, 120, 120, 120, 120, 120);
    assertThat(justOutside.hourly(91, 90, 90, 90, 90, 90).drift().orElseThrow().baseline())
        .isEqualTo(120);
  }

  /** Long ago unwell, and since then exactly as many well values as make a baseline. */
  @Test
  void shouldRecoverOnAsManyValuesAsMakeABaseline() {
    var course = heartRate().hourly(120, 120, 120, 120, 120, 120);
    course.at(START.plus(Duration.ofHours(40)), 80);
    for (int hour = 41; hour < 45; hour++) {
      course.at(START.plus(Duration.ofHours(hour)), 80);
    }
    assertThat(course.drift().orElseThrow().baseline()).isEqualTo(120);

    course.at(START.plus(Duration.ofHours(45)), 80);
    assertThat(course.drift().orElseThrow().baseline()).isEqualTo(80);
  }

  /**
   * Drift towards the expected range is recovery only from outside of it, and up to its far end.
   */
  @ParameterizedTest
  @CsvSource({
    "40, 90, false",
    "40, 91, true",
    "51, 65, true",
    "120, 51, false",
    "120, 50, true",
    "90, 76, true"
  })
  void shouldTellRecoveryFromDriftAtTheEdges(double usual, double value, boolean worse) {
    var course = heartRate().hourly(usual, usual, usual, usual, usual);
    assertThat(course.hourly(value).drift().orElseThrow().worse()).isEqualTo(worse);
  }

  /** The policy's window of 24 hours holds both its ends but the moment itself, and wants two. */
  @Test
  void shouldTakeTheRecentLevelFromWhatTheWindowHolds() {
    var course = Course.of(detector, "news2", ChangeDetector.SCORE_UNIT).hourly(1, 4);

    assertThat(level(course, Duration.ofHours(1))).isEmpty();
    assertThat(level(course, Duration.ofHours(1).plus(MILLI))).contains("2.5");
    assertThat(level(course, Duration.ofHours(24))).contains("2.5");
    assertThat(level(course, Duration.ofHours(24).plus(MILLI))).isEmpty();
  }

  private java.util.Optional<String> level(Course course, Duration after) {
    return detector
        .recentLevel(course.state(), START.plus(after))
        .map(level -> level.toPlainString());
  }

  /** Words have no slope. */
  @Test
  void shouldKeepNoTrendOfWords() {
    var course =
        Course.of(detector, "consciousness", null)
            .hourly("alert", "confused", "voice", "pain", "unresponsive", "unresponsive");

    assertThat(course.state().window().size()).isZero();
    assertThat(course.trend(null, null)).isEmpty();
  }
}
