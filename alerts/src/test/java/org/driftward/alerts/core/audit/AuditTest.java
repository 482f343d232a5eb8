package org.driftward.alerts.core.audit;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.driftward.alerts.core.audit.Ward.START;
import static org.driftward.alerts.core.audit.Ward.at;
import static org.driftward.ingest.contract.Level.HIGH;
import static org.driftward.ingest.contract.Level.LOW;
import static org.driftward.ingest.contract.Level.MEDIUM;

import java.math.BigDecimal;
import java.time.DayOfWeek;
import java.time.Duration;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Set;
import java.util.stream.IntStream;
import org.driftward.alerts.contract.AuditEvent;
import org.driftward.alerts.contract.AuditEvent.Kind;
import org.driftward.alerts.contract.AuditEvent.Place;
import org.driftward.alerts.contract.AuditQuestion;
import org.driftward.alerts.contract.AuditReport.Figure;
import org.driftward.alerts.contract.AuditReport.Measure;
import org.driftward.alerts.core.audit.Evidence.Suppressed;
import org.driftward.alerts.policy.PolicyFile;
import org.junit.jupiter.api.Test;

/**
 * The measures on wards small enough to count by hand; the counting stands beside each. Definitions
 * as in the published sources that each measure names.
 */
class AuditTest {

  private static final String NURSE = "n.one";
  private static final String SERVICE = "driftward";

  private final Ward ward = new Ward();

  /** Answers after 2, 4, 6 and 18 min: median (4+6)/2, 90th percentile 6 + 0.7 x 12 (type 7). */
  @Test
  void shouldTimeAnswersAsAHandWould() {
    for (int i = 0; i < 4; i++) {
      int minutes = List.of(2, 4, 6, 18).get(i);
      ward.change("V-" + i, "opened", 0, HIGH, SERVICE)
          .change("V-" + i, "acknowledged", minutes, HIGH, NURSE);
    }

    assertThat(value("time-to-acknowledge", "Time, median")).isEqualTo(5);
    assertThat(value("time-to-acknowledge", "Time, 90th percentile")).isCloseTo(14.4, within(1e-9));
    // High: 5 min by the shipped policy, so 2 and 4 of the four.
    assertFigure(ward.figure("time-to-acknowledge", "Within policy"), 2, 4, 50);
  }

  /** R: quantile(c(1,3,4,8,9,12,15,20,21,40), c(.5,.9)) gives 10.5 and 22.9. */
  @Test
  void shouldInterpolateAsOtherSoftwareDoes() {
    var times = List.of(1, 3, 4, 8, 9, 12, 15, 20, 21, 40);
    IntStream.range(0, times.size())
        .forEach(
            i ->
                ward.change("V-" + i, "opened", 0, LOW, SERVICE)
                    .change("V-" + i, "acknowledged", times.get(i), LOW, NURSE));

    assertThat(value("time-to-acknowledge", "Time, median")).isEqualTo(10.5);
    assertThat(value("time-to-acknowledge", "Time, 90th percentile")).isCloseTo(22.9, within(1e-9));
  }

  @Test
  void shouldCountAnAlarmThatNobodyAnsweredAgainstPolicyAndOneThatWentAwayInTimeNotAtAll() {
    ward.change("V-1", "opened", 0, HIGH, SERVICE);
    ward.change("V-2", "opened", 0, HIGH, SERVICE).change("V-2", "closed", 3, HIGH, SERVICE);
    ward.change("V-3", "opened", 0, HIGH, SERVICE).change("V-3", "closed", 6, HIGH, SERVICE);
    ward.change("V-4", "opened", 0, HIGH, SERVICE).change("V-4", "attended", 5, HIGH, NURSE);

    var within = ward.figure("time-to-acknowledge", "Within policy");

    assertFigure(within, 1, 3, 100.0 / 3);
    assertThat(within.counted()).containsExactly("episode/E-V-4");
    assertThat(within.others()).containsExactlyInAnyOrder("episode/E-V-1", "episode/E-V-3");
  }

  @Test
  void shouldNotJudgeAnAlarmWhoseTimeIsNotOver() {
    ward.change("V-1", "opened", 0, HIGH, SERVICE);
    ward.until = at(5).minusMillis(1);
    assertThat(ward.figure("time-to-acknowledge", "Within policy").denominator()).isZero();
    assertThat(ward.figure("time-to-acknowledge", "Within policy").value()).isNull();

    ward.until = at(5);
    assertFigure(ward.figure("time-to-acknowledge", "Within policy"), 0, 1, 0);
  }

  /** At the bedside after 30 min exactly and 31 min; the shipped policy asks for 30. */
  @Test
  void shouldJudgeArrivalAtTheVeryMinute() {
    ward.change("V-1", "opened", 0, HIGH, SERVICE).change("V-1", "attended", 30, HIGH, NURSE);
    ward.change("V-2", "opened", 0, HIGH, SERVICE).change("V-2", "attended", 31, HIGH, NURSE);

    assertFigure(ward.figure("time-to-attend", "Within policy"), 1, 2, 50);
    assertFigure(ward.figure("M19", "At the bedside within 30 min, high"), 1, 2, 50);
  }

  /** The next complete set after 20 and after 70 min; the shipped policy asks for 30. */
  @Test
  void shouldTimeTheNextCompleteSet() {
    ward.change("V-1", "attended", 0, HIGH, NURSE).set("V-1", 20, 5, true, 60);
    ward.change("V-2", "attended", 0, HIGH, NURSE)
        .set("V-2", 25, 5, false, 60)
        .set("V-2", 70, 5, true, 60);

    assertThat(value("time-to-reassess", "Time, median")).isEqualTo(45);
    assertFigure(ward.figure("time-to-reassess", "Within policy"), 1, 2, 50);
  }

  /** 6 alarms over 4 beds x 10 days = 40 bed-days: 15 for 100. */
  @Test
  void shouldCountAlarmsOverOccupiedBedDays() {
    for (int i = 0; i < 4; i++) {
      ward.stay("V-" + i, 10, false);
    }
    for (int i = 0; i < 3; i++) {
      ward.change("V-" + i, "opened", 10, MEDIUM, SERVICE)
          .change("V-" + i, "escalated", 25, MEDIUM, SERVICE, "score-news2", 1, "response team")
          .change("V-" + i, "raised", 30, HIGH, SERVICE)
          .change("V-" + i, "acknowledged", 31, HIGH, NURSE);
    }

    assertFigure(ward.figure("M20", "Alarms per 100 occupied bed-days"), 6, 40, 15);
    assertFigure(ward.figure("M20", "Alarms per patient-day"), 6, 40, 0.15);
    assertFigure(ward.figure("escalations", "To rung 2"), 3, 6, 0.5);
  }

  @Test
  void shouldSayWhatItWouldTakeInsteadOfZero() {
    for (var id : List.of("M1", "M4", "M5", "M8", "M10", "M12", "M13", "alarms-per-nurse-shift")) {
      assertThat(ward.measure(id).figures()).as(id).isEmpty();
      assertThat(ward.measure(id).lacking()).as(id).isNotBlank();
    }
    assertThat(ward.measure("M1").lacking()).contains("arrest");
  }

  @Test
  void shouldHaveEveryMeasureOfTheListOnce() {
    var report =
        new Audit(PolicyFile.shipped().policy(), ZoneOffset.UTC)
            .report(ward.evidence(), ward.question, ward.until);

    var numbered = report.measures().stream().map(Measure::id).filter(id -> id.startsWith("M"));
    assertThat(numbered)
        .containsExactlyElementsOf(IntStream.rangeClosed(1, 20).mapToObj(i -> "M" + i).toList());
  }

  /** Every 60 min due: after 60 (in time), 79 (+32 %), 80 (+33 %), 100 (+67 %) minutes. */
  @Test
  void shouldCallASetLateAsRedfernDoes() {
    ward.stay("V-1", 10, false);
    ward.set("V-1", 0, 7, true, 60)
        .set("V-1", 60, 7, true, 60)
        .set("V-1", 60 + 79, 7, true, 60)
        .set("V-1", 60 + 79 + 80, 7, true, 60)
        .set("V-1", 60 + 79 + 80 + 101, 7, true, 60);
    ward.until = at(60 + 79 + 80 + 101);

    assertFigure(ward.figure("M14", "Taken by the time it was due"), 1, 4, 25);
    assertFigure(ward.figure("M14", "Overdue by 33 % of the interval or more"), 2, 4, 50);
    assertFigure(ward.figure("M14", "67 % or more, score 7 or more"), 1, 4, 25);
    assertThat(ward.figure("M14", "33 % or more, score 0 to 4").denominator()).isZero();
  }

  @Test
  void shouldNotWantASetOfSomebodyWhoHasLeft() {
    ward.stay("V-1", 1.0 / 24, true).set("V-1", 0, 2, true, 60);
    ward.stay("V-2", 1.1 / 24, true).set("V-2", 0, 2, true, 60);

    assertThat(ward.figure("M14", "Taken by the time it was due").denominator()).isEqualTo(1);
  }

  @Test
  void shouldCountCompleteSets() {
    ward.stay("V-1", 10, false).set("V-1", 0, 1, true, 60).set("V-1", 60, 1, false, 60);

    assertFigure(ward.figure("M15", "All core observations"), 1, 2, 50);
  }

  /** Two rules fired, one was kept quiet: 1 of 3. */
  @Test
  void shouldCountWhatAlteredLimitsKeptQuiet() {
    ward.change("V-1", "opened", 0, HIGH, SERVICE)
        .change("V-1", "reasons-changed", 5, HIGH, SERVICE)
        .change("V-2", "opened", 0, MEDIUM, SERVICE);
    ward.suppressed.add(new Suppressed("V-3", "heron", at(9), "score-news2", MEDIUM));

    assertFigure(ward.figure("M16", "Suppressed, all levels"), 1, 3, 100.0 / 3);
    assertFigure(ward.figure("M16", "Suppressed, medium"), 1, 2, 50);
  }

  /** One ward arrest among 2 admissions: 500 for 1000; the one in emergency counts nowhere. */
  @Test
  void shouldCountArrestsByWhereTheyWere() {
    ward.stay("V-1", 1, true).stay("V-2", 1, true);
    ward.change("V-1", "opened", 0, HIGH, SERVICE);
    ward.event(Kind.ARREST, "V-1", 300, Place.WARD, false)
        .event(Kind.ARREST, "V-2", 300, Place.INTENSIVE_CARE, false)
        .event(Kind.ARREST, "V-2", 300, Place.EMERGENCY, false);

    assertFigure(ward.figure("M1", "Per 1000 admissions"), 1, 2, 500);
    assertFigure(ward.figure("M2", "With a trigger before"), 1, 1, 100);
    assertFigure(ward.figure("M10", "Outside intensive care"), 1, 2, 50);
  }

  /** The trigger was at the start: a move after 6 h counts, one a minute later does not. */
  @Test
  void shouldTimeTheWayToIntensiveCare() {
    for (var encounter : List.of("V-1", "V-2", "V-3")) {
      ward.stay(encounter, 9, false);
    }
    ward.change("V-1", "opened", 0, HIGH, SERVICE).change("V-2", "opened", 0, HIGH, SERVICE);
    ward.event(Kind.INTENSIVE_CARE_MOVE, "V-1", 360, Place.WARD, true)
        .event(Kind.INTENSIVE_CARE_MOVE, "V-2", 361, Place.WARD, true)
        .event(Kind.INTENSIVE_CARE_MOVE, "V-3", 10, Place.WARD, true);

    assertFigure(ward.figure("M4", "Within 6 h"), 1, 2, 50);
    assertThat(value("M4", "First critical trigger to move, median")).isEqualTo(360.5);
  }

  /**
   * Of four events: no criteria met; one period without a call; two periods without a call; one
   * period with a call.
   */
  @Test
  void shouldTellAfferentFailureInOneAndInSeveralPeriods() {
    for (int i = 1; i <= 4; i++) {
      ward.stay("V-" + i, 9, false)
          .event(Kind.INTENSIVE_CARE_MOVE, "V-" + i, 600, Place.WARD, false);
    }
    ward.set("V-1", 100, 4, true, 60);
    ward.set("V-2", 100, 5, true, 60).set("V-2", 160, 6, true, 60);
    ward.set("V-3", 100, 5, true, 60).set("V-3", 160, 2, true, 60).set("V-3", 220, 7, true, 60);
    ward.set("V-4", 100, 8, true, 60);
    ward.call("V-4", 120);

    assertFigure(ward.figure("M13", "All"), 2, 4, 50);
    assertFigure(ward.figure("M13", "Single period"), 1, 4, 25);
    assertFigure(ward.figure("M13", "Multiple periods"), 1, 4, 25);
  }

  @Test
  void shouldCountDeathsAfterFailedEscalation() {
    ward.stay("V-1", 0.5, true).stay("V-2", 0.5, true);
    ward.change("V-1", "opened", 0, HIGH, SERVICE).change("V-1", "acknowledged", 6, HIGH, NURSE);
    ward.change("V-2", "opened", 0, HIGH, SERVICE).change("V-2", "acknowledged", 5, HIGH, NURSE);
    ward.event(Kind.DEATH, "V-1", 700, Place.WARD, true)
        .event(Kind.DEATH, "V-2", 700, Place.WARD, false);

    assertFigure(ward.figure("M12", "After failed escalation"), 1, 2, 500);
    assertFigure(ward.figure("M12", "Unexpected"), 1, 2, 500);
  }

  /** 30 answers of mean 4 and 10 of mean 2: mean 3.5; 40 of 80 answered. */
  @Test
  void shouldWeighSurveysByTheirAnswers() {
    ward.events.add(survey("S-1", "4", 30, 50));
    ward.events.add(survey("S-2", "2", 10, 30));

    assertThat(value("M8", "Mean score")).isEqualTo(3.5);
    assertFigure(ward.figure("M8", "Response rate"), 40, 80, 50);
  }

  @Test
  void shouldLookOnlyAtTheHoursDaysAndScoresAskedFor() {
    ward.stay("V-1", 10, false);
    ward.set("V-1", -5, 3, true, 600).set("V-1", 115, 8, true, 600);
    ward.change("V-1", "opened", 0, HIGH, SERVICE).change("V-1", "raised", 120, HIGH, SERVICE);

    ward.question = asked(Set.of(2), Set.of(), null);
    // One hour of each of ten days.
    assertFigure(ward.figure("M20", "Alarms per patient-day"), 1, 10.0 / 24, 2.4);
    ward.question = asked(Set.of(), Set.of(DayOfWeek.TUESDAY), null);
    // The 6th and the 13th; the alarms were on Monday the 5th.
    assertFigure(ward.figure("M20", "Alarms per patient-day"), 0, 2, 0);
    ward.question = asked(Set.of(), Set.of(), 7);
    assertFigure(ward.figure("M20", "Alarms per patient-day"), 1, 10, 0.1);
    ward.question = AuditQuestion.of(Set.of("kestrel"), START, START.plus(Duration.ofDays(10)));
    assertThat(ward.figure("M20", "Alarms per patient-day").denominator()).isZero();
  }

  private static AuditQuestion asked(Set<Integer> hours, Set<DayOfWeek> days, Integer from) {
    var end = START.plus(Duration.ofDays(10));
    return new AuditQuestion(Set.of("heron"), START, end, hours, days, from, null);
  }

  private static AuditEvent survey(String id, String mean, int answered, int asked) {
    return new AuditEvent(
        id,
        Kind.SURVEY,
        at(1),
        "heron",
        null,
        Place.WARD,
        false,
        false,
        new BigDecimal(mean),
        answered,
        asked,
        null);
  }

  private double value(String measure, String figure) {
    return ward.figure(measure, figure).value();
  }

  private static void assertFigure(
      Figure figure, double numerator, double denominator, double value) {
    assertThat(figure.numerator()).isEqualTo(numerator);
    assertThat(figure.denominator()).isCloseTo(denominator, within(1e-9));
    assertThat(figure.value()).isCloseTo(value, within(1e-9));
  }
}
