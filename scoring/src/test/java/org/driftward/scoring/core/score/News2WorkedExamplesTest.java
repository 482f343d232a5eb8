package org.driftward.scoring.core.score;

import static org.assertj.core.api.Assertions.assertThat;
import static org.driftward.scoring.core.score.Patients.set;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

/** Whole sets: published worked examples, vectors computed from the table, and wrong copies. */
class News2WorkedExamplesTest {

  /**
   * A hypothetical ward patient over twelve hours, Clinical Medicine 2020: published total 5 each
   * time, while the inspired oxygen rises; the other observations are described as unchanged.
   */
  @ParameterizedTest
  @CsvSource({"91,30", "90,40", "89,50"})
  void shouldAgreeWithTheWardPatientOfClinicalMedicine2020(int saturation, int concentration) {
    var patient =
        set(16, saturation, "oxygen", 120, 70, "alert", "36.8")
            .with("inspired-oxygen-fraction", concentration);
    assertThat(patient.total("news2")).isEqualTo(5);
  }

  /** Inputs of the NHS England and INTEROPen FHIR guide's scenario; total computed. */
  @Test
  void shouldScoreTheScenarioOfTheFhirGuideAsFive() {
    var patient = set(21, 93, "air", 120, 95, "alert", "37.5");
    assertThat(patient.total("news2")).isEqualTo(5);
    assertThat(patient.score("news2").inputs())
        .extracting(scored -> scored.points())
        .containsExactly(2, 2, 0, 0, 1, 0, 0);
  }

  /** A Welsh FHIR guide prints 1 for 37.5 and a total of 6 for the same inputs. Wrong: 0 and 5. */
  @Test
  void shouldNotRepeatTheExampleThatTotalsSix() {
    var patient = set(21, 93, "air", 120, 95, "alert", "37.5").with("diastolic-pressure", 60);
    assertThat(patient.points("news2", "temperature")).isZero();
    assertThat(patient.total("news2")).isNotEqualTo(6).isEqualTo(5);
  }

  /** The maximum of the HL7 Norway observation guide's example: published 20. */
  @ParameterizedTest
  @CsvSource({"97", "83"})
  void shouldReachTwentyAtTheWorst(int saturation) {
    var patient = set(25, saturation, "oxygen", 90, 40, "voice", "35.0").onScale(2);
    assertThat(patient.total("news2")).isEqualTo(20);
  }

  /** The same guide labels 93 to 94 on oxygen with 3 points. Wrong: 1. */
  @ParameterizedTest
  @CsvSource({"93", "94"})
  void shouldNotRepeatTheMislabelledCell(int saturation) {
    var patient = set(16, saturation, "oxygen", 120, 70, "alert", "36.8").onScale(2);
    assertThat(patient.points("news2", "oxygen-saturation")).isEqualTo(1);
  }

  /** A handbook page prints the zero cell as 93 or more WITH oxygen. Wrong: on air. */
  @Test
  void shouldNotRepeatTheSwappedCell() {
    var onAir = set(16, 97, "air", 120, 70, "alert", "36.8").onScale(2);
    var onOxygen = set(16, 97, "oxygen", 120, 70, "alert", "36.8").onScale(2);
    assertThat(onAir.points("news2", "oxygen-saturation")).isZero();
    assertThat(onOxygen.points("news2", "oxygen-saturation")).isEqualTo(3);
  }

  /** One copy prints the systolic band "19-100". Wrong: 91 to 100. */
  @ParameterizedTest
  @CsvSource({"19", "50", "90"})
  void shouldNotRepeatTheSystolicMisprint(int systolic) {
    var patient = set(16, 97, "air", systolic, 70, "alert", "36.8");
    assertThat(patient.points("news2", "systolic-pressure")).isEqualTo(3);
  }

  /** Some pages give 93 to 94 on AIR one point on scale 2. Wrong: 0. */
  @ParameterizedTest
  @CsvSource({"93", "94"})
  void shouldNotScoreHighSaturationOnAir(int saturation) {
    var patient = set(16, saturation, "air", 120, 70, "alert", "36.8").onScale(2);
    assertThat(patient.total("news2")).isZero();
  }

  /** Inputs of a paramedic course's case; totals computed, 13 on scale 2 and 10 on scale 1. */
  @Test
  void shouldScoreTheCourseCaseByItsOxygenScale() {
    var patient = set(30, 98, "oxygen", 155, 119, "confused", "36.2");
    assertThat(patient.onScale(2).total("news2")).isEqualTo(13);
    assertThat(patient.total("news2")).isEqualTo(10);
  }

  /** An incomplete set from a university's teaching page: at least 9 whatever is missing. */
  @Test
  void shouldBoundTheIncompleteTeachingCase() {
    var score =
        Bedside.adult()
            .with("respiratory-rate", 42)
            .with("oxygen-saturation", 92)
            .with("inspired-oxygen", "air")
            .with("heart-rate", 116)
            .with("temperature", "40.6")
            .score("news2");
    assertThat(score.low()).isEqualByComparingTo("9");
    assertThat(score.high()).isEqualByComparingTo("15");
    assertThat(score.risk()).isEqualTo("high");
    assertThat(score.missing()).containsExactly("systolic-pressure", "consciousness");
  }

  /** An incomplete set from an examination station: at least 6. */
  @Test
  void shouldBoundTheIncompleteExaminationCase() {
    var score =
        Bedside.adult()
            .with("respiratory-rate", 30)
            .with("oxygen-saturation", 96)
            .with("inspired-oxygen", "air")
            .with("consciousness", "confused")
            .score("news2");
    assertThat(score.low()).isEqualByComparingTo("6");
    assertThat(score.high()).isEqualByComparingTo("15");
    assertThat(score.risk()).isEqualTo("medium");
    assertThat(score.riskIfWorst()).isEqualTo("high");
    assertThat(score.missing()).containsExactly("systolic-pressure", "heart-rate", "temperature");
  }

  /** Computed from the table, no source. */
  @ParameterizedTest
  @CsvSource({
    "16, 97, air, 120, 70, alert, 36.8, 0, 0",
    "16, 97, oxygen, 120, 70, alert, 36.8, 2, 5",
    "25, 97, air, 120, 70, alert, 36.8, 3, 3",
    "16, 97, air, 120, 70, confused, 36.8, 3, 3",
    "18, 88, air, 130, 84, alert, 36.9, 3, 0",
    "18, 93, oxygen, 130, 84, alert, 36.9, 4, 3",
    "18, 96, oxygen, 130, 84, alert, 36.9, 2, 4",
    "18, 97, oxygen, 130, 84, alert, 36.9, 2, 5",
    "29, 91, air, 192, 111, confused, 39.1, 13, 10",
    "28, 89, air, 90, 115, alert, 38.9, 12, 9",
  })
  void shouldScoreConstructedSetsOnBothScales(
      int respiration,
      int saturation,
      String gas,
      int systolic,
      int pulse,
      String acvpu,
      String t,
      int scale1,
      int scale2) {
    var patient = set(respiration, saturation, gas, systolic, pulse, acvpu, t);
    assertThat(patient.total("news2")).isEqualTo(scale1);
    assertThat(patient.onScale(2).total("news2")).isEqualTo(scale2);
  }
}
