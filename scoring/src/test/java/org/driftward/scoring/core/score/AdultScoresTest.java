package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.scoring.core.score.Patients.well;

import java.util.Set;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** MEWS, qSOFA, SIRS and the Glasgow Coma Scale against their published tables. */
class AdultScoresTest {

  /**
   * Subbe et al., QJM 2001, bands as in an encyclopaedia copy; 70, 40: engineering choice; 200,
   * 130, 30 and 38.5 themselves: from memory.
   */
  @ParameterizedTest
  @CsvSource({
    "systolic-pressure,69,3",
    "systolic-pressure,70,3",
    "systolic-pressure,71,2",
    "systolic-pressure,80,2",
    "systolic-pressure,81,1",
    "systolic-pressure,100,1",
    "systolic-pressure,101,0",
    "systolic-pressure,199,0",
    "systolic-pressure,200,2",
    "heart-rate,39,2",
    "heart-rate,40,2",
    "heart-rate,41,1",
    "heart-rate,50,1",
    "heart-rate,51,0",
    "heart-rate,100,0",
    "heart-rate,101,1",
    "heart-rate,110,1",
    "heart-rate,111,2",
    "heart-rate,129,2",
    "heart-rate,130,3",
    "respiratory-rate,8,2",
    "respiratory-rate,9,0",
    "respiratory-rate,14,0",
    "respiratory-rate,15,1",
    "respiratory-rate,20,1",
    "respiratory-rate,21,2",
    "respiratory-rate,29,2",
    "respiratory-rate,30,3",
    "temperature,34.9,2",
    "temperature,35.0,0",
    "temperature,38.4,0",
    "temperature,38.44,0",
    "temperature,38.45,2",
    "temperature,38.5,2",
    "consciousness,alert,0",
    "consciousness,voice,1",
    "consciousness,pain,2",
    "consciousness,unresponsive,3",
    "consciousness,confused,1"
  })
  void shouldScoreEveryEdgeOfMews(String code, String value, int points) {
    assertThat(well().with(code, value).total("mews")).isEqualTo(points);
  }

  /** Computed from the table. Order: systolic, pulse, respiration, temperature, AVPU. */
  @ParameterizedTest
  @CsvSource({
    "120,70,12,37.0,alert,0,low",
    "120,70,16,37.0,alert,1,low",
    "95,112,24,38.6,voice,8,raised",
    "68,135,32,34.5,unresponsive,14,raised",
    "200,50,8,35.0,pain,7,raised",
    "100,110,20,38.4,alert,3,low",
    "81,111,15,37.0,alert,4,low",
    "81,111,21,37.0,alert,5,raised"
  })
  void shouldTotalMews(
      int systolic, int pulse, int respiration, String t, String avpu, int total, String risk) {
    var patient = Patients.set(respiration, 97, "air", systolic, pulse, avpu, t);
    assertThat(patient.total("mews")).isEqualTo(total);
    assertThat(patient.score("mews").risk()).isEqualTo(risk);
  }

  /** 14 is the maximum of the table: computed. */
  @Test
  void shouldBoundMewsByItsMaximum() {
    var score = Bedside.adult().with("heart-rate", 70).score("mews");
    assertThat(score.low()).isEqualByComparingTo("0");
    assertThat(score.high()).isEqualByComparingTo("11");
  }

  /** Seymour et al., JAMA 2016: 22 and 100 both count; GCS below 15 as altered is from memory. */
  @ParameterizedTest
  @CsvSource({
    "22,100,4,5,6,2,positive",
    "21,101,4,5,6,0,low",
    "22,101,4,4,6,2,positive",
    "30,80,3,4,6,3,positive",
    "22,101,4,5,6,1,low",
    "21,100,4,5,6,1,low",
    "21,101,4,5,5,1,low"
  })
  void shouldScoreQsofa(
      int respiration, int systolic, int eye, int verbal, int motor, int total, String risk) {
    var patient =
        Bedside.adult()
            .with("respiratory-rate", respiration)
            .with("systolic-pressure", systolic)
            .with("gcs-eye", eye)
            .with("gcs-verbal", verbal)
            .with("gcs-motor", motor);
    assertThat(patient.total("qsofa")).isEqualTo(total);
    assertThat(patient.score("qsofa").risk()).isEqualTo(risk);
  }

  @ParameterizedTest
  @CsvSource({"alert,0", "confused,1", "voice,1", "pain,1", "unresponsive,1"})
  void shouldReadAlteredMentationFromTheWord(String word, int points) {
    assertThat(well().with("consciousness", word).total("qsofa")).isEqualTo(points);
  }

  /** ACCP/SCCM 1992: all strict, so 38.0, 36.0, 90 and 20 do not count. */
  @ParameterizedTest
  @CsvSource({
    "temperature,35.9,1", "temperature,36.0,0", "temperature,38.0,0", "temperature,38.1,1",
    "temperature,38.04,0", "heart-rate,90,0", "heart-rate,91,1", "heart-rate,100,1",
    "respiratory-rate,20,0", "respiratory-rate,21,1"
  })
  void shouldScoreEveryEdgeOfTheBedsideSirsCriteria(String code, String value, int points) {
    assertThat(well().with(code, value).total("sirs")).isEqualTo(points);
  }

  @ParameterizedTest
  @CsvSource({"36.8,70,14,not-met", "38.5,70,14,open", "38.5,95,14,met", "38.5,95,24,met"})
  void shouldSayThatOneBedsideCriterionLeavesSirsOpen(
      String t, int pulse, int respiration, String risk) {
    var patient = Patients.set(respiration, 97, "air", 120, pulse, "alert", t);
    assertThat(patient.score("sirs").risk()).isEqualTo(risk);
    assertThat(patient.score("sirs").title()).contains("3 of 4");
  }

  /**
   * Teasdale and Jennett 1974; 13 to 15, 9 to 12, 3 to 8 as in the HL7 FHIR R4 example, whose E4 V4
   * M5 is 13.
   */
  @ParameterizedTest
  @CsvSource({
    "4,5,6,15,mild-or-none",
    "4,4,5,13,mild-or-none",
    "4,4,4,12,moderate",
    "2,2,5,9,moderate",
    "2,2,4,8,severe",
    "1,1,1,3,severe",
    "3,3,3,9,moderate"
  })
  void shouldAddUpTheGlasgowComaScale(int eye, int verbal, int motor, int total, String risk) {
    var patient =
        Bedside.adult().with("gcs-eye", eye).with("gcs-verbal", verbal).with("gcs-motor", motor);
    assertThat(patient.total("gcs")).isEqualTo(total);
    assertThat(patient.score("gcs").risk()).isEqualTo(risk);
    assertThat(patient.score("gcs").single()).isZero();
  }

  /**
   * An untestable voice leaves no sum: from memory. Lower is worse, so the risk is that of high.
   */
  @Test
  void shouldBoundTheGlasgowComaScaleWithoutTheVoice() {
    var score = Bedside.adult().with("gcs-eye", 1).with("gcs-motor", 4).score("gcs");
    assertThat(score.low()).isEqualByComparingTo("6");
    assertThat(score.high()).isEqualByComparingTo("10");
    assertThat(score.risk()).isEqualTo("moderate");
    assertThat(score.riskIfWorst()).isEqualTo("severe");
    assertThat(score.missing()).containsExactly("gcs-verbal");
  }

  @ParameterizedTest
  @CsvSource({"1,none", "2,to pressure", "3,to sound", "4,spontaneous"})
  void shouldNameTheEyeOpening(int grade, String words) {
    assertThat(Bedside.adult().with("gcs-eye", grade).scored("gcs", "gcs-eye").band())
        .isEqualTo(words);
  }

  @Test
  void shouldShowAScoreOnlyOnceItHasBegun() {
    assertThat(well().gives("gcs")).isFalse();
    assertThat(Bedside.adult().gives("mews")).isFalse();
  }

  @Test
  void shouldKeepAdultScoresFromChildrenAndPregnancy() {
    var adultScores = new String[] {"mews", "qsofa", "sirs", "shock-index", "rox"};
    assertThat(well().as(Subject.ofAge(15)).scores())
        .extracting(score -> score.id())
        .doesNotContain(adultScores);
    assertThat(well().as(new Subject(30, 1, Set.of("pregnant"))).scores())
        .extracting(score -> score.id())
        .doesNotContain(adultScores);
  }
}
