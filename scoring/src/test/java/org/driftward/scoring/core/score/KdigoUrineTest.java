package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** KDIGO 2012, table 2, urine output; vectors computed for 70 kg. */
class KdigoUrineTest {

  /** A catheter emptied {@code hours} ago, and this much since, in hourly volumes. */
  private static Bedside passed(int hours, String total) {
    var bedside = Bedside.adult().ago("P3D").with("body-weight", 70);
    for (int hour = hours; hour > 0; hour--) {
      bedside = bedside.ago("PT" + hour + "H").with("urine-output", hour == hours ? 100 : 0);
    }
    return bedside.with("urine-output", total);
  }

  private static Bedside weighedNow(Bedside bedside) {
    return bedside.without("body-weight").with("body-weight", 70);
  }

  @ParameterizedTest
  @CsvSource({"6,209,1", "6,210,0", "12,419,2", "12,420,0", "12,1,2", "12,0,3"})
  void shouldStageAtLeastByTheHoursCovered(int hours, String total, int stage) {
    var score = weighedNow(passed(hours, total)).score("kdigo-urine");
    assertThat(score.low()).isEqualByComparingTo(Integer.toString(stage));
    assertThat(score.high()).isEqualByComparingTo("3");
    assertThat(score.complete()).isFalse();
    assertThat(score.missing()).containsExactly("urine-output");
  }

  /** Even hourly volumes over a day. 503 mL is 0.2994 mL/kg/h, 504 mL is 0.3000. */
  @ParameterizedTest
  @CsvSource({"503,3,stage-3", "504,2,stage-2", "839,2,stage-2", "840,0,none", "2000,0,none"})
  void shouldStageExactlyOnceADayIsCovered(int total, int stage, String risk) {
    var bedside = Bedside.adult().ago("PT24H").with("urine-output", 100);
    for (int hour = 23; hour > 0; hour--) {
      bedside = bedside.ago("PT" + hour + "H").with("urine-output", perHour(total));
    }
    var rest = new BigDecimal(total).subtract(perHour(total).multiply(BigDecimal.valueOf(23)));
    var score = bedside.with("urine-output", rest).with("body-weight", 70).score("kdigo-urine");
    assertThat(score.complete()).isTrue();
    assertThat(score.low()).isEqualByComparingTo(Integer.toString(stage));
    assertThat(score.risk()).isEqualTo(risk);
  }

  private static BigDecimal perHour(int total) {
    return new BigDecimal(total).divide(BigDecimal.valueOf(24), 3, RoundingMode.HALF_UP);
  }

  @Test
  void shouldExplainTheRateItComputed() {
    var scored = weighedNow(passed(6, "209")).scored("kdigo-urine", "urine-rate-6h");
    assertThat(scored.value().plain()).isEqualTo("0.4976");
    assertThat(scored.unit()).isEqualTo("mL/kg/h");
    assertThat(scored.derivedFrom()).isEqualTo("since 2026-01-05T06:00:00Z, 70 kg");
  }

  @Test
  void shouldRateOverTheTimeReallyCovered() {
    var sevenHours =
        Bedside.adult()
            .with("body-weight", 70)
            .ago("PT7H")
            .with("urine-output", 100)
            .with("urine-output", 245);
    assertThat(sevenHours.scored("kdigo-urine", "urine-rate-6h").value().plain())
        .isEqualTo("0.5000");
    assertThat(sevenHours.score("kdigo-urine").low()).isEqualByComparingTo("0");
  }

  @Test
  void shouldNotTakeALongGapForASixHourWindow() {
    var eightHoursAndMore =
        Bedside.adult()
            .with("body-weight", 70)
            .ago("PT8H1S")
            .with("urine-output", 100)
            .with("urine-output", 100);
    assertThat(eightHoursAndMore.gives("kdigo-urine")).isFalse();
  }

  @Test
  void shouldNotBeginWithoutAWeightOrAPast() {
    assertThat(passed(6, "100").without("body-weight").gives("kdigo-urine")).isFalse();
    var patient = weighedNow(passed(6, "100"));
    var scores = Bedside.BOOK.score(patient.picture(), patient.subject(), code -> Bedside.SERVES);
    assertThat(scores).extracting(score -> score.id()).doesNotContain("kdigo-urine");
  }

  @Test
  void shouldStageNoUrineWithoutAWeight() {
    var score = passed(12, "0").without("body-weight").score("kdigo-urine");
    assertThat(score.low()).isEqualByComparingTo("3");
    assertThat(score.missing()).contains("body-weight");
  }

  @Test
  void shouldKeepAWeightForAMonthWhereThePolicySaysNothing() {
    var patient = passed(6, "209");
    var scores =
        Bedside.BOOK.score(patient.picture(), patient.subject(), code -> null, patient.history());
    assertThat(scores).extracting(score -> score.id()).contains("kdigo-urine");
  }

  /** 209 mL in the 6 hours recorded with it: stage 1 from one entry. */
  @Test
  void shouldTakeTheHoursRecordedWithAVolume() {
    var patient =
        Bedside.adult()
            .with("body-weight", 70)
            .with("urine-output", 209)
            .with("urine-output-period", 6);
    assertThat(patient.scored("kdigo-urine", "urine-rate-6h").value().plain()).isEqualTo("0.4976");
    assertThat(patient.score("kdigo-urine").low()).isEqualByComparingTo("1");
  }

  private static Bedside twoShifts(String earlier, int hours, int later) {
    return Bedside.adult()
        .with("body-weight", 70)
        .ago(earlier)
        .with("urine-output", 210)
        .ago(earlier)
        .with("urine-output-period", hours)
        .with("urine-output", 209)
        .with("urine-output-period", later);
  }

  @Test
  void shouldJoinTwoCollectionsThatMeet() {
    assertThat(twoShifts("PT6H", 6, 6).score("kdigo-urine").low()).isEqualByComparingTo("2");
    assertThat(twoShifts("PT6H15M", 6, 6).score("kdigo-urine").low()).isEqualByComparingTo("2");
  }

  @Test
  void shouldNotJoinCollectionsWithAGapOrAnOverlap() {
    assertThat(twoShifts("PT6H15M1S", 6, 6).score("kdigo-urine").low()).isEqualByComparingTo("1");
    assertThat(twoShifts("PT4H", 6, 6).gives("kdigo-urine")).isFalse();
  }
}
