package org.driftward.scoring.core.plan;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.time.Duration;
import java.time.Instant;
import java.util.List;
import org.driftward.ingest.contract.Level;
import org.driftward.scoring.contract.CarePlan;
import org.driftward.scoring.contract.Scalar;
import org.driftward.scoring.contract.Score;
import org.driftward.scoring.contract.UrgentFinding;
import org.driftward.scoring.core.plan.ObservationPlan.Next;
import org.driftward.scoring.core.policy.ObservationRule;
import org.driftward.scoring.policy.PolicyFile;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ObservationPlanTest {

  private static final Instant TAKEN = Instant.parse("2026-01-05T06:00:00Z");
  private static final VitalSet COMPLETE = new VitalSet(TAKEN, List.of());
  private static final List<String> CORE =
      List.of(
          "respiratory-rate",
          "oxygen-saturation",
          "systolic-pressure",
          "heart-rate",
          "consciousness",
          "temperature");

  private final ObservationPlan plan = new ObservationPlan(PolicyFile.shipped().observations());

  /**
   * RCP NEWS2 2017, chart 4: 0 at least every 12 hours; 1 to 4 every 4 to 6 hours (the shorter is
   * local policy); 3 in one parameter and 5 to 6 every hour; 7 or more continuous (half an hour
   * between sets by hand is local policy).
   */
  @ParameterizedTest
  @CsvSource({
    "0, 0, PT12H",
    "1, 1, PT4H",
    "4, 2, PT4H",
    "3, 3, PT1H",
    "4, 3, PT1H",
    "3, 1, PT4H",
    "5, 2, PT1H",
    "6, 3, PT1H",
    "7, 2, PT30M",
    "7, 3, PT30M",
    "20, 3, PT30M"
  })
  void shouldFollowThePublishedFrequencies(int total, int single, Duration interval) {
    var next = plan.next(COMPLETE, List.of(news2(total, total, single)), List.of(), TAKEN, null);

    assertThat(next)
        .isEqualTo(new Next(TAKEN.plus(interval), interval, "NEWS2 " + total, List.of()));
  }

  /** NICE CG50: at least every 12 hours. */
  @Test
  void shouldNotWaitLongerThanTwelveHours() {
    var next = plan.next(COMPLETE, List.of(), List.of(), TAKEN, null);

    assertThat(next.due()).isEqualTo(TAKEN.plus(Duration.ofHours(12)));
    assertThat(next.why()).isEqualTo("no score asks for more");
  }

  @Test
  void shouldNotGoByAScoreThatThePolicyDoesNotName() {
    var other = score("another", 9, 9, 3);

    assertThat(plan.next(COMPLETE, List.of(other), List.of(), TAKEN, null).interval())
        .isEqualTo(Duration.ofHours(12));
  }

  @Test
  void shouldSettleAScoreThatMayBeInAStricterBand() {
    var next = plan.next(COMPLETE, List.of(news2(1, 4, 1)), List.of(), TAKEN, null);

    assertThat(next.interval()).isEqualTo(Duration.ofHours(1));
    assertThat(next.why()).isEqualTo("NEWS2 is at least 1 and at most 4: respiratory-rate missing");
  }

  /** An hour by what is recorded and an hour to settle it: what is recorded is the reason. */
  @Test
  void shouldGiveTheRecordedPointsForTheReasonWhereBothAskForTheSame() {
    var next = plan.next(COMPLETE, List.of(news2(5, 8, 2)), List.of(), TAKEN, null);

    assertThat(next.interval()).isEqualTo(Duration.ofHours(1));
    assertThat(next.why()).isEqualTo("NEWS2 5");
  }

  /** Without a time to settle in, missing inputs change nothing. */
  @Test
  void shouldGoByTheRecordedPointsAloneWhereThePolicySaysSo() {
    var shipped = PolicyFile.shipped().observations();
    var patient =
        new ObservationPlan(
            new ObservationRule(
                shipped.core(),
                shipped.minimum(),
                shipped.longest(),
                null,
                shipped.urgent(),
                shipped.frequencies()));

    assertThat(patient.next(COMPLETE, List.of(news2(1, 20, 1)), List.of(), TAKEN, null).interval())
        .isEqualTo(Duration.ofHours(4));
  }

  @Test
  void shouldNotHurryAScoreThatStaysInItsBandWhateverIsMissing() {
    var next = plan.next(COMPLETE, List.of(news2(1, 3, 1)), List.of(), TAKEN, null);

    assertThat(next.interval()).isEqualTo(Duration.ofHours(4));
  }

  @Test
  void shouldNotSlowDownAHighScoreThatMissesInputs() {
    var next = plan.next(COMPLETE, List.of(news2(8, 11, 3)), List.of(), TAKEN, null);

    assertThat(next.interval()).isEqualTo(Duration.ofMinutes(30));
  }

  /** Local policy: what a set lacks is measured within the hour, whatever its points say. */
  @Test
  void shouldMoveTheNextSetByAWholeIntervalOnlyForAWholeSet() {
    var lacking = new VitalSet(TAKEN, List.of("respiratory-rate", "consciousness"));

    var next = plan.next(lacking, List.of(news2(0, 0, 0)), List.of(), TAKEN, null);

    assertThat(next.interval()).isEqualTo(Duration.ofHours(1));
    assertThat(next.why()).isEqualTo("the set lacks respiratory-rate, consciousness");
  }

  /** Local policy, beside every score: a life-threatening value is looked at again soon. */
  @ParameterizedTest
  @CsvSource({"HIGH, PT30M", "MEDIUM, PT1H", "LOW, PT4H"})
  void shouldComeBackSoonAfterAnUrgentFinding(Level level, Duration interval) {
    var urgent =
        new UrgentFinding(
            "stridor",
            null,
            null,
            Scalar.of("at-rest"),
            null,
            TAKEN,
            level,
            0,
            "Stridor at rest",
            "local policy");

    var next = plan.next(COMPLETE, List.of(news2(0, 0, 0)), List.of(urgent), TAKEN, null);

    assertThat(next.interval()).isEqualTo(interval);
    assertThat(next.why()).isEqualTo("Stridor at rest");
  }

  /** Local policy; the sources of these scores print no intervals. */
  @ParameterizedTest
  @CsvSource({
    "pews-brighton, 9, 2, PT30M",
    "pews-brighton, 3, 3, PT30M",
    "pews-brighton, 3, 1, PT1H",
    "pews-brighton, 0, 0, PT4H",
    "mews, 5, 2, PT30M",
    "mews, 0, 0, PT12H"
  })
  void shouldHaveIntervalsForEveryScoreThatMayLead(
      String score, int total, int single, Duration interval) {
    var next =
        plan.next(COMPLETE, List.of(score(score, total, total, single)), List.of(), TAKEN, null);

    assertThat(next.interval()).isEqualTo(interval);
  }

  @Test
  void shouldLetTheCarePlanWinWhileItIsInForce() {
    var carePlan = carePlan(Duration.ofHours(2), TAKEN, TAKEN.plus(Duration.ofHours(8)));

    assertThat(plan.next(COMPLETE, List.of(news2(7, 7, 3)), List.of(), TAKEN, carePlan))
        .isEqualTo(
            new Next(
                TAKEN.plus(Duration.ofHours(2)),
                Duration.ofHours(2),
                "care plan 3: comfort comes first",
                List.of()));
  }

  @Test
  void shouldGoByTheCarePlanFromItsFirstToItsLastMillisecond() {
    var from = TAKEN.plusSeconds(60);
    var until = TAKEN.plus(Duration.ofHours(8));
    var carePlan = carePlan(Duration.ofHours(2), from, until);

    assertThat(intervalAt(from.minusMillis(1), carePlan)).isEqualTo(Duration.ofMinutes(30));
    assertThat(intervalAt(from, carePlan)).isEqualTo(Duration.ofHours(2));
    assertThat(intervalAt(until.minusMillis(1), carePlan)).isEqualTo(Duration.ofHours(2));
    assertThat(intervalAt(until, carePlan)).isEqualTo(Duration.ofMinutes(30));
  }

  /**
   * When the signed settings end, the standard ones are back, and with them the shorter interval.
   */
  @Test
  void shouldCallForASetWhenTheCarePlanLapses() {
    var until = TAKEN.plus(Duration.ofHours(3));
    var carePlan = carePlan(Duration.ofHours(12), TAKEN, until);

    assertThat(plan.next(COMPLETE, List.of(news2(7, 7, 3)), List.of(), TAKEN, carePlan).due())
        .isEqualTo(until);
    assertThat(plan.next(COMPLETE, List.of(news2(2, 2, 1)), List.of(), TAKEN, carePlan).due())
        .isEqualTo(TAKEN.plus(Duration.ofHours(4)));
    assertThat(plan.next(COMPLETE, List.of(news2(0, 0, 0)), List.of(), TAKEN, carePlan).due())
        .isEqualTo(TAKEN.plus(Duration.ofHours(12)));
  }

  @Test
  void shouldGoByTheScoreWhereTheCarePlanNamesNoInterval() {
    var carePlan = carePlan(null, TAKEN, TAKEN.plus(Duration.ofHours(8)));

    assertThat(plan.next(COMPLETE, List.of(news2(7, 7, 3)), List.of(), TAKEN, carePlan).interval())
        .isEqualTo(Duration.ofMinutes(30));
  }

  /** The six core observations of NICE CG50. */
  @Test
  void shouldCallTheSixCoreObservationsComplete() {
    var set = plan.setIn(CORE, code -> false, TAKEN).orElseThrow();

    assertThat(set.takenAt()).isEqualTo(TAKEN);
    assertThat(set.complete()).isTrue();
  }

  @Test
  void shouldNameWhatAPartialSetLacks() {
    var set = plan.setIn(CORE.subList(1, 5), code -> false, TAKEN).orElseThrow();

    assertThat(set.complete()).isFalse();
    assertThat(set.partial()).containsExactly("respiratory-rate", "temperature");
    assertThat(plan.next(set, List.of(), List.of(), TAKEN, null).partial())
        .isEqualTo(set.partial());
  }

  /** HL7 FHIR sends each vital sign as an Observation of its own. */
  @Test
  void shouldTakeWhatComesOneByOneInOneLookForASet() {
    var earlier = CORE.subList(0, CORE.size() - 1);
    var last = List.of(CORE.get(CORE.size() - 1));
    assertThat(plan.setIn(last, earlier::contains, TAKEN).orElseThrow().complete()).isTrue();
  }

  @Test
  void shouldNotTakeANoteShortlyAfterASetForAnotherSet() {
    assertThat(plan.setIn(List.of("cough"), CORE::contains, TAKEN)).isEmpty();
  }

  @Test
  void shouldNotTakeASpotCheckForASet() {
    assertThat(plan.setIn(CORE.subList(0, 3), code -> false, TAKEN)).isEmpty();
    assertThat(plan.setIn(List.of("cough", "pulse-amplitude", "heart-rate"), code -> false, TAKEN))
        .isEmpty();
  }

  @Test
  void shouldTakeTheWholeComaScaleForConsciousness() {
    var parts =
        List.of(
            "respiratory-rate",
            "oxygen-saturation",
            "systolic-pressure",
            "heart-rate",
            "temperature",
            "gcs-eye",
            "gcs-verbal");

    assertThat(plan.setIn(parts, code -> false, TAKEN).orElseThrow().partial())
        .containsExactly("consciousness");
    var whole = new java.util.ArrayList<>(parts);
    whole.add("gcs-motor");
    assertThat(plan.setIn(whole, code -> false, TAKEN).orElseThrow().complete()).isTrue();
  }

  private Duration intervalAt(Instant asOf, CarePlan carePlan) {
    return plan.next(COMPLETE, List.of(news2(7, 7, 3)), List.of(), asOf, carePlan).interval();
  }

  private static CarePlan carePlan(@Nullable Duration interval, Instant from, Instant until) {
    return new CarePlan(
        "V-1",
        3,
        1,
        List.of(),
        interval,
        null,
        null,
        "comfort comes first",
        "consultant",
        from,
        until);
  }

  private static Score news2(int low, int high, int single) {
    return score("news2", low, high, single);
  }

  private static Score score(String id, int low, int high, int single) {
    return new Score(
        id,
        id.toUpperCase(java.util.Locale.ROOT),
        "2017.1",
        BigDecimal.valueOf(low),
        BigDecimal.valueOf(high),
        low == high,
        "any",
        "any",
        single,
        null,
        low == high ? List.of() : List.of("respiratory-rate"),
        List.of());
  }
}
